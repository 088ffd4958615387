export {
  type Balance,
  type BalanceEffort,
  fewestStations,
  leastTakt,
  type NoBalance,
} from "./balance.ts";
export { type BalanceFault, balanceFaults } from "./check.ts";
export type { BalanceProblem } from "./line.ts";

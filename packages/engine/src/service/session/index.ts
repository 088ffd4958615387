export { FaultFinder } from "./finder.ts";
export { Says } from "./says.ts";
export {
  type Cause,
  type CauseSuspect,
  type Done,
  type FaultAnswer,
  type FaultSession,
  type LookAnswer,
  lookKey,
  NO_SESSION,
  type Proposal,
  type SessionLook,
} from "./session.ts";

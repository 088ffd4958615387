/**
 * 10,000 random requests of everyone against the whole API, in process: none may be answered by a fault of the
 * server, and every refusal is a problem as the contract has it. `npx tsx prove/server-fuzz.ts [SEED] [REQUESTS]`
 */
import { fuzz } from "../packages/server/src/testing/fuzz.ts";
import { writeJson } from "./write-json.ts";

const seed = Number(process.argv[2] ?? "20261125");
const requests = Number(process.argv[3] ?? "10000");
const { statuses, wrong } = await fuzz(seed, requests);
const counts = Object.fromEntries(
  [...statuses].sort(([a], [b]) => a - b).map(([status, count]) => [String(status), count]),
);
for (const line of wrong.slice(0, 20)) process.stderr.write(`${line}\n`);
writeJson("server-fuzz.json", { seed, requests, statuses: counts, wrong: wrong.length });
process.exitCode = wrong.length === 0 ? 0 : 1;

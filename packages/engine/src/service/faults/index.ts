export { type ServiceFault, SYMPTOMS, type Symptom } from "./fault.ts";
export { FaultModel } from "./fault-model.ts";
export { type FaultClass, FaultTable, FaultTableMaker } from "./fault-table.ts";
export { type MachineFunction, machineFunctions } from "./functions.ts";
export { type Likely, likeliest } from "./likeliest.ts";
export { type Joint, type ServiceNetwork, serviceNetwork } from "./network.ts";
export { type Seen, type Sightings, worse } from "./seen.ts";
export { type FailureCounts, SUSPECT_KINDS, type Suspect, type SuspectKind, suspectsOf } from "./suspects.ts";

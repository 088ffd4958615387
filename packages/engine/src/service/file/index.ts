export type {
  FaultFile,
  FileFunction,
  FileItem,
  FileLabels,
  FileLanding,
  FilePanel,
  FilePoint,
  FileWire,
} from "./fault-file.ts";
export { FAULT_FILE_MARK, faultPageOf, LANGUAGE_MARK } from "./fault-page.ts";
export { fileJointId, fileSubjects, fileSuspectId } from "./file-ids.ts";
export { type FaultFileLine, type FaultFileOptions, faultFileOf, pointOf } from "./make-fault-file.ts";
export { FaultFileOpening, type OpenedFaultFile, openFaultFile } from "./open-fault-file.ts";
export { FaultFileError, readFaultFile } from "./read-fault-file.ts";

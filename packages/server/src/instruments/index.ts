export { ContinuityTester } from "./continuity-tester.ts";
export type { ConversationOptions } from "./conversation.ts";
export { InstrumentError } from "./instrument-error.ts";
export { ScpiInstrument } from "./scpi-instrument.ts";
export { parseScpiNumber } from "./scpi-number.ts";

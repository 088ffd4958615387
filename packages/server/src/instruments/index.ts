export { type Instrument, instrumentsOf } from "./configured.ts";
export { ContinuityTester } from "./continuity-tester.ts";
export type { ConversationOptions } from "./conversation.ts";
export { InstrumentDesk } from "./instrument-desk.ts";
export { InstrumentError } from "./instrument-error.ts";
export { ScpiInstrument } from "./scpi-instrument.ts";
export { parseScpiNumber } from "./scpi-number.ts";

import type { FaultFile, LookAnswer, SessionLook } from "@pinwright/engine";
import type { FaultWords } from "@pinwright/words/service";
import type { Names, Spot } from "./names.ts";

type Words = FaultWords["faults"];

/** What looks are told with. */
export interface LookWords {
  readonly file: FaultFile;
  readonly names: Names;
  readonly words: Words;
}

const number = (value: number): string => String(Number(value.toPrecision(3)));

/** What to do, in a sentence. */
export function lookAsks({ file, names, words }: LookWords, look: SessionLook): string {
  const { asks } = words;
  switch (look.kind) {
    case "try": {
      const f = names.functionOfId(look.id)?.f ?? -1;
      const own = file.functions[f];
      const isEmitter = own?.kind === "driven" && file.items[own.item]?.class === "sensor";
      return (isEmitter ? asks.tryEmitter : asks.try)(names.functionName(f));
    }
    case "inspect": {
      const joint = names.jointOfId(look.id);
      const kind = elementKind(file, joint);
      if (kind === "fuse") return asks.inspectFuse(names.joint(joint));
      return kind === "contact"
        ? asks.inspectSwitch(names.joint(joint))
        : asks.inspectMoves(names.joint(joint));
    }
    case "reseat":
      return asks.reseat(look.ids.map((id) => names.plugSpot(id).text));
    case "ohms":
      return asks.ohms;
    case "part":
      return asks.part(names.joint(names.jointOfId(look.id)));
    case "volts":
      return asks.volts(`${number(voltsOf(file, look.source))} V`);
  }
}

/** Where the black probe goes, then the red one; where one thing is looked at, that alone. */
export function lookSpots({ file, names }: LookWords, look: SessionLook): readonly Spot[] {
  switch (look.kind) {
    case "ohms":
      return [names.spot(look.a), names.spot(look.b)];
    case "volts": {
      const source = file.sources.find(({ id }) => id === look.source);
      return [names.spot(file.nodes[source?.minus ?? -1] ?? ""), names.spot(look.node)];
    }
    case "part": {
      const joint = file.joints[names.jointOfId(look.id)];
      if (joint === undefined) return [];
      return [names.spot(file.nodes[joint[1]] ?? ""), names.spot(file.nodes[joint[2]] ?? "")];
    }
    case "reseat":
      return look.ids.map((id) => names.plugSpot(id));
    case "inspect":
      return [names.jointSpot(names.jointOfId(look.id))];
    case "try": {
      const f = names.functionOfId(look.id)?.f ?? -1;
      return [{ text: names.functionName(f), item: file.functions[f]?.item ?? -1, landing: -1, pin: null }];
    }
  }
}

/** What is read when it is good and when it is bad; null: nothing is read. */
export function lookReadings(
  lookWords: LookWords,
  look: SessionLook,
  good: "yes" | "no",
): { readonly good: string; readonly bad: string } | null {
  const { file, names, words } = lookWords;
  const { readings } = words;
  const either = (yes: string, no: string) =>
    good === "yes" ? { good: yes, bad: no } : { good: no, bad: yes };
  if (look.kind === "ohms") return either(readings.joined, readings.notJoined);
  if (look.kind === "volts")
    return either(readings.volts(number(voltsOf(file, look.source))), readings.noVolts);
  return look.kind === "part" ? partReadings(words, elementOf(file, names.jointOfId(look.id))) : null;
}

function partReadings({ readings }: Words, element: FaultFile["elements"][number] | undefined) {
  switch (element?.kind) {
    case "coil":
      return {
        good: element.ohm === null ? readings.coilAny : readings.coil(number(element.ohm)),
        bad: readings.coilBad,
      };
    case "speaker":
      return { good: readings.speaker, bad: readings.motorBad };
    case "led":
      return { good: readings.led, bad: readings.ledBad };
    case "diode":
      return { good: readings.diode, bad: readings.diodeBad };
    case "contact":
      return {
        good: element.normally === "closed" ? readings.contactClosed : readings.contactOpen,
        bad: readings.contactBad,
      };
    default:
      return {
        good: element?.ohm == null ? readings.motor : readings.coil(number(element.ohm)),
        bad: readings.motorBad,
      };
  }
}

/** Words of an answer: first what counts as good. */
export function answerWords({ answers }: Words, look: SessionLook): readonly [good: string, bad: string] {
  const pair =
    look.kind === "ohms" || look.kind === "volts" || look.kind === "part"
      ? answers.measured
      : answers[look.kind];
  return [pair[0] ?? "", pair[1] ?? ""];
}

/** A look that was done and what it told, in a line. */
export function lookedLine(lookWords: LookWords, look: SessionLook, answer: LookAnswer): string {
  const { words, file } = lookWords;
  const where = lookSpots(lookWords, look)
    .map(({ text }) => text)
    .join(" – ");
  return words.looked(`${words.looks[look.kind]}: ${where}`, told(words, file, look, answer));
}

function told(words: Words, file: FaultFile, look: SessionLook, answer: LookAnswer): string {
  if (answer === "unsure") return words.answers.unsure;
  const isYes = answer === "yes";
  if (look.kind === "ohms") return isYes ? words.readings.joined : words.readings.notJoined;
  if (look.kind === "volts")
    return isYes ? words.readings.volts(number(voltsOf(file, look.source))) : words.readings.noVolts;
  return answerWords(words, look)[isYes ? 0 : 1];
}

const voltsOf = (file: FaultFile, source: string): number =>
  file.sources.find(({ id }) => id === source)?.volts ?? 0;

function elementOf(file: FaultFile, n: number): FaultFile["elements"][number] | undefined {
  const joint = file.joints[n];
  return joint?.[0] === "e" ? file.elements[joint[3]] : undefined;
}

const elementKind = (file: FaultFile, n: number): string => elementOf(file, n)?.kind ?? "";

import type { MachineChange } from "@pinwright/engine";
import type { Teller } from "./compare-teller.ts";

/** What became of a finding or of its acceptance; null: the change is of another kind. */
export function findingSentence(teller: Teller, { what, values }: MachineChange): string | null {
  const { words } = teller;
  const told = (): ReturnType<Teller["finding"]> => teller.finding(values);
  switch (what) {
    case "finding-new":
      return words.findingNew(teller.severity(values), told().title, told().of);
    case "finding-gone":
      return words.findingGone(teller.severity(values), told().title, told().of);
    case "accepted":
      return words.accepted(told().title, told().of, String(values.by), String(values.why));
    case "finding-numbers":
      return findingNumbers(teller, values);
    case "accepted-otherwise":
      return values.why === values.was
        ? words.acceptedBy(told().title, told().of, String(values.by), String(values.wasBy))
        : words.acceptedOtherwise(
            ...([
              told().title,
              told().of,
              String(values.by),
              String(values.why),
              String(values.was),
            ] as const),
          );
    case "accepted-bounds":
      return words.acceptedBounds(
        ...([told().title, told().of, teller.bounds(values.from), teller.bounds(values.to)] as const),
      );
    case "acceptance-new": {
      const say = values.isThere === "yes" ? words.acceptsTooLittle : words.acceptsNothing;
      return say(told().title, told().of, String(values.by), String(values.why));
    }
    case "acceptance-gone":
      return words.acceptanceGone(told().title, told().of);
    case "acceptance-changed":
      return words.acceptanceChanged(told().title, told().of, String(values.why), String(values.was));
    case "no-longer-accepted":
      return words.noLongerAccepted(told().title, told().of);
    default:
      return null;
  }
}

/** Other figures of a finding; where its sentence leaves out the ones that differ, these by their names. */
function findingNumbers(teller: Teller, values: MachineChange["values"]): string {
  const { words } = teller;
  const [from, to] = [teller.figures(values, values.from), teller.figures(values, values.to)];
  // What the sentence does not name tells it apart from others of its rule.
  const title = teller.titleBeside(values, to);
  if (from !== to) return words.findingNumbers(title, from, to);
  const [old, now] = [first(values.from), first(values.to)];
  const others = Object.keys({ ...old, ...now }).filter((name) => old[name] !== now[name]);
  const say = (numbers: Readonly<Record<string, unknown>>): string =>
    words.and(others.map((name) => teller.figure(name, numbers[name])));
  return words.findingNumbers(title, say(old), `${to}; ${say(now)}`);
}

const first = (list: unknown): Readonly<Record<string, unknown>> => {
  const [own] = Array.isArray(list) ? list : [];
  return typeof own === "object" && own !== null ? { ...own } : {};
};

import type { NamedThing } from "@pinwright/engine";
import { call } from "../../../api/call.ts";
import { useAsked } from "../../bench/use-asked.ts";
import { useWords } from "../../words.tsx";
import { NameLink } from "./thing-links.tsx";

/** Readings that are looked at for each test. */
const READINGS = 50;
/** Tests whose readings are asked for. */
const MOST = 20;

/** Tests of it, each with how its last readings went. */
export function ThingTests({ tests }: { readonly tests: readonly NamedThing[] }) {
  const own = useWords().serviceThing;
  if (tests.length === 0) return null;
  return (
    <section>
      <h3>{own.tests}</h3>
      <ul className="thing-list">
        {tests.slice(0, MOST).map((test) => (
          <li key={test.id}>
            <NameLink named={test} /> <Readings test={test.id} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Readings({ test }: { readonly test: string }) {
  const own = useWords().serviceThing;
  const { answer } = useAsked(`readings ${test}`, (signal) =>
    call("readings", { parts: {}, query: { test, limit: READINGS }, signal }),
  );
  if (answer === undefined) return null;
  const good = answer.filter((reading) => reading.good).length;
  return (
    <small className={good < answer.length ? "amber-text" : "dim"}>
      {answer.length === 0 ? own.noReadings : own.readings(good, answer.length)}
    </small>
  );
}

import type { ArrivedFact } from "@pinwright/contract";
import { useState } from "react";
import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { usePeople, useWhen } from "../names.tsx";
import { useFactText } from "../unit/fact-text.ts";
import { useAsked } from "../use-asked.ts";

/** Facts of one answer. */
const AT_ONCE = 1000;
const FIRST = 100;

/** Every record that is kept and does not count; the last one first. */
async function allAside(signal: AbortSignal): Promise<readonly ArrivedFact[]> {
  const all: ArrivedFact[] = [];
  for (;;) {
    const query = { after: all.at(-1)?.no ?? 0, limit: AT_ONCE };
    const some = await call("asideFacts", { parts: {}, query, signal });
    all.push(...some);
    if (some.length < AT_ONCE) return all.reverse();
  }
}

/** Records that contradict others, or whose writer may not come in or may not do that: kept, shown, and not counted. */
export function AsideFacts() {
  const { benchRecords, common } = useWords();
  const own = benchRecords.aside;
  const { answer, failed } = useAsked("aside", allAside);
  const [most, setMost] = useState(FIRST);
  return (
    <section aria-labelledby="aside-facts">
      <h3 id="aside-facts">
        {own.title} {answer !== undefined && answer.length > 0 && <small>({answer.length})</small>}
      </h3>
      <p className="dim">{own.about}</p>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {answer === undefined ? (
        failed === "" && <p className="dim">{common.loading}</p>
      ) : answer.length === 0 ? (
        <p>{own.none}</p>
      ) : (
        <div className="plain-scroll">
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{own.when}</th>
                <th scope="col">{own.who}</th>
                <th scope="col">{own.record}</th>
                <th scope="col">{own.why}</th>
                <th scope="col">{own.device}</th>
              </tr>
            </thead>
            <tbody>
              {answer.slice(0, most).map((one) => (
                <Row key={one.no} one={one} />
              ))}
            </tbody>
          </table>
          {answer.length > most && (
            <button type="button" className="link-button" onClick={() => setMost(most + FIRST)}>
              {own.more(Math.min(FIRST, answer.length - most))}
            </button>
          )}
        </div>
      )}
    </section>
  );
}

function Row({ one: { fact, aside } }: { readonly one: ArrivedFact }) {
  const { benchRecords } = useWords();
  const { bookId } = useDesk();
  const textOf = useFactText();
  const nameOf = usePeople();
  const when = useWhen();
  const { body } = fact;
  const { kind, says } = textOf(body);
  return (
    <tr>
      <td>{when(fact.at)}</td>
      <td>{nameOf(fact.person)}</td>
      <th scope="row">
        {"unit" in body && <Link href={unitAddress(bookId, body.unit)}>{body.unit}</Link>} <b>{kind}</b>{" "}
        {says}
      </th>
      <td>{aside !== null && benchRecords.aside.whys[aside]}</td>
      <td className="dim">
        {fact.stream} · {fact.seq}
      </td>
    </tr>
  );
}

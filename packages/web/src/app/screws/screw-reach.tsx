import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { usePick, useWords } from "../words.tsx";
import { Fact } from "./fact.tsx";

type About = ViewEntry<"screwAbout">;
type Named = NonNullable<About["holds"]>;

/** The tool, what is in its way when all is in place, and what comes off first. */
export function ScrewReachFacts({ about: { reach, nut } }: { readonly about: About }) {
  const words = useWords().screws;
  const pick = usePick();
  if (reach === null) return <p className="dim">{words.reach.unknown}</p>;
  const tool = (driver: Named | null): string =>
    driver === null ? words.reach.noTool : pick(driver.label, driver.labelZh) || driver.id;
  return (
    <div className="group">
      <h4>{words.reach.title}</h4>
      <dl className="facts">
        <Fact name={words.reach.driver}>
          <span className={reach.driver === null ? "amber-text" : ""}>{tool(reach.driver)}</span>
        </Fact>
        <Fact name={words.reach.inWay}>
          <Names list={reach.inWay} none={words.reach.free} />
        </Fact>
        {nut !== null && (
          <>
            <Fact name={words.reach.nutDriver}>{tool(reach.nutDriver)}</Fact>
            <Fact name={words.reach.nutInWay}>
              <Names list={reach.nutInWay} none={words.reach.free} />
            </Fact>
          </>
        )}
        <Fact name={words.reach.comesOff}>
          <Names list={reach.comesOff} none={words.reach.nothingOff} />
        </Fact>
      </dl>
      {reach.ownInWay && <p className="error-text">{words.reach.own}</p>}
    </div>
  );
}

function Names({ list, none }: { readonly list: readonly Named[]; readonly none: string }) {
  const pick = usePick();
  const { bookId } = useDesk();
  if (list.length === 0) return none;
  return list.map((one, i) => (
    <span key={one.id}>
      {i > 0 && ", "}
      <Link href={addressOf(bookId, { kind: "item", id: one.id })} title={one.id}>
        {pick(one.label, one.labelZh) || one.id}
      </Link>
    </span>
  ));
}

import type { Languages } from "@pinwright/engine";
import { useEffect } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { FindingLines } from "../../screws/finding-lines.tsx";
import { usePick, useWords } from "../../words.tsx";
import { newProblemAddress } from "../address.ts";
import { openAbout } from "../problems/chosen-problems.ts";
import { ProblemLines } from "../problems/open-problems.tsx";
import { useProblems } from "../problems/use-problems.ts";
import { ThingDefects } from "./thing-defects.tsx";
import { ThingHistory } from "./thing-history.tsx";
import { NameLink, Names } from "./thing-links.tsx";
import { Controls, Parts, Printed, Screws, Shares, Steps } from "./thing-lists.tsx";
import { ThingMap } from "./thing-map.tsx";
import { Pins, Wires } from "./thing-pins.tsx";
import { ThingTests } from "./thing-tests.tsx";

type Page = ViewEntry<"thing">;
type Thing = Page["thing"];

/** All that the book and the records say of one thing. */
export function ThingPage({ page, asked }: { readonly page: Page; readonly asked: string }) {
  const own = useWords().serviceThing;
  const pick = usePick();
  const { thing } = page;
  const name = pick(thing.labels.en, thing.labels.zh) || thing.id;
  useEffect(() => {
    document.title = `${name} · Pinwright`;
  }, [name]);
  return (
    <>
      <h2>
        {name}{" "}
        <small className="dim">
          {thing.itemKind === null || thing.kind === "type"
            ? own.kinds[thing.kind]
            : (itemKind(own.itemKinds, thing.itemKind) ?? own.kinds[thing.kind])}
          {" · "}
          {thing.id}
        </small>
      </h2>
      <div className="thing-columns">
        <Facts thing={thing} />
        <ThingMap thing={thing} name={name} />
      </div>
      <Pins pins={thing.pins} />
      <Wires wires={thing.wires} />
      <Controls thing={thing} />
      <Shares thing={thing} />
      <div className="thing-columns">
        <div>
          <Parts thing={thing} />
          <Screws thing={thing} />
          <Steps thing={thing} />
          <ThingTests tests={thing.tests} />
        </div>
        <div>
          <Problems thing={thing} asked={asked} />
          <section>
            <h3>{own.findings}</h3>
            {thing.findings.length === 0 ? (
              <p className="dim">{own.noFindings}</p>
            ) : (
              <FindingLines findings={thing.findings} about={thing.id} />
            )}
          </section>
          <ThingDefects thing={thing} />
        </div>
      </div>
      <Printed sheets={page.sheets} />
      <ThingHistory rows={page.rows} />
    </>
  );
}

const itemKind = (words: Readonly<Record<string, string>>, kind: string): string | undefined => words[kind];

function Facts({ thing }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  const pick = usePick();
  const { bookId } = useDesk();
  const panels = useView("layoutPanels", null);
  const panel = panels?.get(thing.place?.panelId ?? "");
  const named = (labels: Languages, id: string): string => pick(labels.en, labels.zh) || id;
  const figures: Readonly<Record<string, readonly string[]>> = own.figures;
  const isWiring = ["net", "wire", "connector", "point"].includes(thing.kind);
  return (
    <div>
      <dl className="thing-facts">
        {thing.number !== "" && (
          <div>
            <dt>{own.number}</dt>
            <dd>
              <b>{thing.number}</b>
            </dd>
          </div>
        )}
        {thing.type !== null && (
          <div>
            <dt>{own.type}</dt>
            <dd>
              <NameLink named={thing.type} />
            </dd>
          </div>
        )}
        {thing.of !== null && (
          <div>
            <dt>{own.of}</dt>
            <dd>
              <NameLink named={thing.of} />
            </dd>
          </div>
        )}
        {thing.place !== null && (
          <div>
            <dt>{own.where}</dt>
            <dd>
              {own.place(
                panel === undefined
                  ? thing.place.panelId
                  : named({ en: panel.label, zh: panel.labelZh }, panel.id),
                thing.place.side,
                thing.place.xMm.toFixed(1),
                thing.place.yMm.toFixed(1),
              )}
            </dd>
          </div>
        )}
        {Object.entries(thing.figures).map(([key, value]) => {
          const [label = key, unit = ""] = figures[key] ?? [];
          return (
            <div key={key}>
              <dt>{label}</dt>
              <dd title={String(value)}>
                {typeof value === "number" ? Number(value.toPrecision(3)) : value} {unit}
              </dd>
            </div>
          );
        })}
      </dl>
      <p className="thing-links">
        {(thing.kind === "item" || thing.kind === "panel" || thing.kind === "lane") && (
          <Link href={`/b/${bookId}/layout?id=${encodeURIComponent(thing.id)}`}>{own.inLayout}</Link>
        )}
        {isWiring && (
          <Link href={`/b/${bookId}/wiring?id=${encodeURIComponent(thing.id)}`}>{own.inWiring}</Link>
        )}
        {thing.harnessIds.map((id) => (
          <Link key={id} href={`/b/${bookId}/harnesses/${encodeURIComponent(id)}`}>
            {own.sheetOf(id)}
          </Link>
        ))}
      </p>
      {thing.children.length > 0 && (
        <section>
          <h3>{thing.kind === "type" || thing.kind === "part" ? own.ofType : own.within}</h3>
          <Names things={thing.children} />
        </section>
      )}
    </div>
  );
}

function Problems({ thing, asked }: { readonly thing: Thing; readonly asked: string }) {
  const { serviceThing: own } = useWords();
  const { bookId } = useDesk();
  const { answer } = useProblems();
  const ids = new Set([thing.id, ...(thing.type === null ? [] : [thing.type.id])]);
  const about = (answer ?? []).filter((problem) => problem.about.some(({ id }) => ids.has(id)));
  const open = openAbout(about, null);
  const ended = about.filter(({ state }) => state === "ended");
  return (
    <section aria-labelledby="thing-problems">
      <h3 id="thing-problems">{own.problems}</h3>
      {answer !== undefined && about.length === 0 ? (
        <p className="dim">{own.noProblems}</p>
      ) : (
        <ProblemLines problems={[...open, ...ended]} />
      )}
      <Link href={newProblemAddress(bookId, { about: asked, from: "letter" })}>{own.newProblem}</Link>
    </section>
  );
}

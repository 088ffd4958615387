import { Button } from "@mantine/core";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { usePick, useWords } from "../words.tsx";
import { ConductorTable } from "./currents/conductors-tab.tsx";
import { shareStep } from "./currents/figures.ts";
import { ShareMark, ShareScale } from "./currents/share-mark.tsx";
import { useCurrents } from "./currents/use-currents.ts";
import { EndText, HarnessLink } from "./links.tsx";
import { dotOf, NET_STEP, netLines } from "./net-lines.ts";
import { fixed, mmText } from "./number-text.ts";
import { WireColour } from "./wire-colour.tsx";

/** A net: what it is, and how its ends are joined. */
export function NetDetail({ id }: { readonly id: string }) {
  const { wiring: words, electric, common } = useWords();
  const pick = usePick();
  const address = useCurrents();
  const net = useView("net", id)?.get("");
  const conductors = useView("electricConductors", { of: "net", id });
  if (net === undefined) return <p className="dim">{common.loading}</p>;
  return (
    <article>
      <header className="detail-head">
        <h2>{net.id}</h2>
        <span>{pick(net.label.en, net.label.zh)}</span>
        <span style={{ flex: 1 }} />
        <Button component={Link} variant="default" href={address("ladder", id)}>
          {electric.ladderOf}
        </Button>
      </header>
      <dl className="facts">
        <Fact term={words.class} text={words.classes[net.class]} />
        {net.supply !== null && <Fact term={words.supply} text={net.supply} />}
        {net.volts !== null && <Fact term={words.volts} text={`${net.volts} V`} />}
        {net.amps !== null && <Fact term={words.amps} text={`${net.amps} A`} />}
        <Fact term={words.shape} text={words.shapes[net.shape]} />
        <Fact term={words.size} text={`${words.ends(net.ends)}, ${words.wires(net.wires)}`} />
        <Fact term={words.metres} text={`${fixed(net.metres, 2)} m`} />
      </dl>
      {net.harnesses.length > 0 && (
        <p>
          {words.inHarnesses}:{" "}
          {net.harnesses.map((harness, i) => (
            <span key={harness.id}>
              {i > 0 && ", "}
              <HarnessLink harness={harness} />
            </span>
          ))}
        </p>
      )}
      <h3>{words.diagram}</h3>
      {net.wires === 0 && <p className="amber-text">{words.noWires}</p>}
      <p className="dim">{words.diagramHint}</p>
      {conductors !== null && conductors.size > 0 && <ShareScale />}
      <NetDiagram rows={net.rows} shareOf={(one) => conductors?.get(one)?.share ?? null} />
      {conductors !== null && conductors.size > 0 && (
        <>
          <h3>{electric.title}</h3>
          <ConductorTable caption={electric.title} rows={[...conductors.values()]} />
        </>
      )}
    </article>
  );
}

export function Fact({ term, text }: { readonly term: string; readonly text: string }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{text}</dd>
    </div>
  );
}

/** The share of its limit that a wire or contact uses, by its id; null where nothing is known. */
type ShareOf = (id: string) => number | null;

/** How near something is to its limit, as the drawing shows it; nothing where that is not known. */
const stepOf = (share: number | null): number | undefined => (share === null ? undefined : shareStep(share));

function NetDiagram({
  rows,
  shareOf,
}: {
  readonly rows: ViewEntry<"net">["rows"];
  readonly shareOf: ShareOf;
}) {
  const columns = Math.max(0, ...rows.map((row) => row.column)) + 1;
  const width = NET_STEP.left * 2 + (columns - 1) * NET_STEP.column;
  return (
    <div className="net-diagram">
      <svg width={width} height={rows.length * NET_STEP.row} aria-hidden="true">
        {netLines(rows).map(({ path, kind, wireId }) => (
          <path
            key={path}
            d={path}
            data-kind={kind}
            data-step={wireId === null ? undefined : stepOf(shareOf(wireId))}
          />
        ))}
        {rows.map((row, i) => {
          const { x, y } = dotOf(row.column, i);
          return row.isSplice ? (
            <path key={row.id} data-kind="splice" d={`M${x - 6} ${y}l6 -6l6 6l-6 6z`} />
          ) : (
            <circle
              key={row.id}
              cx={x}
              cy={y}
              r={row.parent === null ? 6 : 4}
              data-step={stepOf(shareOf(row.id))}
            />
          );
        })}
      </svg>
      <ol>
        {rows.map((row, i) => (
          <NetRowText key={row.id} row={row} isApart={row.parent === null && i > 0} shareOf={shareOf} />
        ))}
      </ol>
    </div>
  );
}

function NetRowText({
  row,
  isApart,
  shareOf,
}: {
  readonly row: ViewEntry<"net">["rows"][number];
  readonly isApart: boolean;
  readonly shareOf: ShareOf;
}) {
  const words = useWords().wiring;
  const { bookId } = useDesk();
  const { via } = row;
  const share = via?.kind === "wire" ? shareOf(via.wireId) : null;
  return (
    <li style={{ height: NET_STEP.row }} title={isApart ? words.apart : undefined}>
      <span className="net-via">
        {via?.kind === "wire" && (
          <>
            <Link href={addressOf(bookId, { kind: "wire", id: via.wireId })}>{via.printed}</Link>{" "}
            <WireColour code={via.colour} /> <span className="dim">{mmText(via.lengthMm)} mm</span>
            {share !== null && <ShareMark share={share} />}
          </>
        )}
        {via?.kind === "through" && <span className="dim">{words.through}</span>}
      </span>
      <EndText end={row} />
    </li>
  );
}

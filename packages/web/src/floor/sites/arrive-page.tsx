import { useMemo, useState } from "react";
import { Link } from "wouter";
import { useWords } from "../../app/words.tsx";
import { useDevice, useOwnFacts } from "../device.tsx";
import { useHere } from "../shell/at-place.tsx";
import { CameraScan } from "../shell/camera.tsx";
import { FloorHead } from "../shell/head.tsx";
import { unitInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";
import { keepBegun, keptBegun } from "./kept-count.ts";
import { type Coming, comingTo, count, countedIn } from "./load.ts";
import { useSiteName } from "./site-pick.tsx";
import { useStanding } from "./use-standing.ts";

/** What is counted in without a transport that anybody announced. */
const NONE = "none";

/** Counts in what arrives at this workshop, transport by transport. */
export function ArrivePage() {
  const { floorBench } = useWords();
  const own = floorBench.sites;
  const { site } = useHere();
  const siteName = useSiteName();
  const standing = useStanding();
  const coming = Array.isArray(standing) ? comingTo(standing, site) : [];
  const begun = useMemo(keptBegun, []);
  const open = [
    ...coming,
    ...begun.filter((one) => !coming.some(({ transport }) => transport === one.transport)),
  ];
  const [chosen, setChosen] = useState<string | null>(null);
  const only = coming.length === 1 ? coming[0] : undefined;
  const transport = chosen ?? only?.transport ?? null;
  if (site === "")
    return (
      <main className="floor-page">
        <FloorHead back="/floor">
          <h1>{own.arriveTitle}</h1>
        </FloorHead>
        <div className="floor-body">
          <p>{own.noSite}</p>
          <Link className="floor-main" href="/floor/place">
            {own.choose}
          </Link>
        </div>
      </main>
    );
  return (
    <main className="floor-page">
      <FloorHead back="/floor">
        <h1>{own.arriveTitle}</h1>
        <span className="floor-name">{siteName(site)}</span>
      </FloorHead>
      {transport === null ? (
        <div className="floor-body">
          <h2>{own.which}</h2>
          {standing === null && <p className="amber-text">{own.unknown}</p>}
          {standing !== "asking" && standing !== null && coming.length === 0 && <p>{own.nothing}</p>}
          <div className="floor-tiles">
            {open.map((one) => (
              <button key={one.transport} type="button" onClick={() => setChosen(one.transport)}>
                {one.transport}
                <small>{own.loaded(one.unitIds.length)}</small>
              </button>
            ))}
            <button type="button" onClick={() => setChosen(NONE)}>
              {own.without}
            </button>
          </div>
        </div>
      ) : (
        <Counting
          key={transport}
          transport={transport}
          site={site}
          announced={coming.find((one) => one.transport === transport)?.unitIds ?? []}
          before={begun.find((one) => one.transport === transport) ?? null}
          isKnown={Array.isArray(standing)}
        />
      )}
    </main>
  );
}

function Counting({
  transport,
  site,
  announced,
  before,
  isKnown,
}: {
  readonly transport: string;
  readonly site: string;
  readonly announced: readonly string[];
  readonly before: Coming | null;
  readonly isKnown: boolean;
}) {
  const { floor, floorBench } = useWords();
  const own = floorBench.sites;
  const { write } = useDevice();
  const facts = useOwnFacts();
  const [says, setSays] = useState("");
  const [noted, setNoted] = useState(false);
  const counted = useMemo(
    () =>
      countedIn(
        facts.map(({ fact }) => fact),
        transport,
      ),
    [facts, transport],
  );
  const { missing, there, extra } = count(announced, before?.unitIds ?? [], counted);
  const all = there.length + missing.length;
  const scanned = async (text: string): Promise<void> => {
    const unit = unitInCode(text);
    if (unit === null) {
      setSays(floor.pick.unknown(text.trim().slice(0, 60)));
      return;
    }
    // What was announced is remembered here: at the server it is on the way no more once it is counted.
    keepBegun({ transport, unitIds: [...there, ...missing] });
    setSays(missing.includes(unit) || counted.has(unit) ? "" : own.extra(unit));
    // The same label twice counts once.
    if (!counted.has(unit)) await write([{ kind: "arrived", unit, transport, site }]);
  };
  const hear = (text: string): void => {
    scanned(text).catch((error: unknown) => setSays(`${floor.work.failedSave} ${String(error)}`));
  };
  useScanner(hear);
  const note = async (): Promise<void> => {
    await write(missing.map((unit) => ({ kind: "noted", unit, says: own.missingSays(transport) })));
    setNoted(true);
  };
  const isComplete = all > 0 && missing.length === 0 && extra.length === 0;
  return (
    <>
      <div className="floor-body">
        <div className="floor-title">
          <p className="floor-figure" role="status">
            {own.counted(there.length, all)}
            {missing.length > 0 && <small className="amber-text"> {own.missing(missing.length)}</small>}
            {extra.length > 0 && <small className="error-text"> {own.tooMuch(extra.length)}</small>}
            {isComplete && <small className="floor-complete"> {own.complete}</small>}
          </p>
          <CameraScan scanned={hear} />
        </div>
        <p>
          {transport === NONE ? own.without : transport} · {own.scanIn}
        </p>
        {!isKnown && <p className="amber-text">{own.unknown}</p>}
        <p role="alert" className="floor-alarm">
          {says}
        </p>
        <Listed title={own.missing(missing.length)} unitIds={missing} kind="missing" />
        <Listed title={own.tooMuch(extra.length)} unitIds={extra} kind="extra" />
        <Listed title={own.counted(there.length, all)} unitIds={there} kind="there" />
      </div>
      <footer className="floor-foot">
        {missing.length > 0 && there.length > 0 && (
          <button type="button" className="floor-plain" disabled={noted} onClick={() => void note()}>
            {noted ? own.noted : own.noteMissing}
          </button>
        )}
        <Link className="floor-main" href="/floor">
          {floor.work.done}
        </Link>
      </footer>
    </>
  );
}

function Listed({
  title,
  unitIds,
  kind,
}: {
  readonly title: string;
  readonly unitIds: readonly string[];
  readonly kind: "missing" | "extra" | "there";
}) {
  if (unitIds.length === 0) return null;
  return (
    <section className="floor-listed" data-kind={kind}>
      <h2>{title}</h2>
      <p>{unitIds.join("  ")}</p>
    </section>
  );
}

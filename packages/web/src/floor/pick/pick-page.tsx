import { type KeptUnit, readSheetCode, UNIT_KINDS, type UnitKind } from "@pinwright/contract";
import { useMemo, useState } from "react";
import { Link, useLocation } from "wouter";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { printAddress } from "../print/print-page.tsx";
import { useUnitList } from "../records/use-units.ts";
import { useKept } from "../service/use-service.ts";
import { useHere } from "../shell/at-place.tsx";
import { CameraScan } from "../shell/camera.tsx";
import { FloorHead } from "../shell/head.tsx";
import { unitInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";
import { keptLast } from "./last-units.ts";

const KINDS: readonly UnitKind[] = ["board", "harness", "mechanism", "machine"];
/** Units of a kind whose records are kept on the device: the newest. */
const MOST_KEPT = 100;
const KIND = "pinwright.floor.kind";

export const workAddress = (unitIds: readonly string[], rest = ""): string =>
  `/floor/u/${encodeURIComponent(unitIds.join("+"))}${rest}`;

/** Which unit is worked on: scanned, or tapped; several boards of one kind go together. */
export function PickPage() {
  const { floor, floorBench } = useWords();
  const sites = useView("floorSites", null);
  const pick = usePick();
  const [, goTo] = useLocation();
  const here = useHere();
  const stations = useView("stations", null);
  const { units, look } = useUnitList();
  const [kind, setKind] = useState<UnitKind>(
    () => UNIT_KINDS.find((one) => one === sessionStorage.getItem(KIND)) ?? "board",
  );
  // Whoever loses the network can still begin any of these, and knows what was done before.
  const ofKind = units?.filter(({ what }) => what === kind) ?? [];
  useKept(ofKind.slice(-MOST_KEPT).map(({ unit }) => `/api/units/${unit}`));
  const [chosen, setChosen] = useState<readonly KeptUnit[]>([]);
  const [several, setSeveral] = useState(false);
  const [says, setSays] = useState("");
  const scanned = async (text: string): Promise<void> => {
    // The code in the corner of a sheet: whether that print still holds.
    if (readSheetCode(text) !== null) {
      goTo(printAddress(text));
      return;
    }
    const id = unitInCode(text);
    const known = (list: readonly KeptUnit[] | null) => list?.find(({ unit }) => unit === id);
    const unit = known(units) ?? known(await look());
    if (unit === undefined) setSays(floor.pick.unknown(text.trim().slice(0, 60)));
    else choose(unit);
  };
  useScanner((text) => void scanned(text));
  const choose = (unit: KeptUnit): void => {
    setSays("");
    if (!several) goTo(workAddress([unit.unit]));
    else if (chosen.some((one) => one.unit === unit.unit))
      setChosen(chosen.filter((one) => one.unit !== unit.unit));
    else if (chosen.some((one) => one.type !== unit.type || one.what !== unit.what))
      setSays(floor.pick.otherType);
    else setChosen([...chosen, unit]);
  };
  const station = stations?.get(here.station);
  return (
    <main className="floor-page">
      <FloorHead back={null}>
        <Link href="/floor/place" className="floor-place">
          {station === undefined ? floor.place.all : pick(station.label, station.labelZh) || station.id}
          <small>{floor.place.change}</small>
        </Link>
      </FloorHead>
      <div className="floor-body">
        {here.takeVersion !== null && (
          <p className="floor-version">
            {floor.newVersion}
            <button type="button" className="floor-plain" onClick={here.takeVersion}>
              {floor.takeVersion}
            </button>
          </p>
        )}
        <div className="floor-title">
          <h1>
            {floor.pick.title} <small>{floor.pick.scan}</small>
          </h1>
          <CameraScan scanned={(text) => void scanned(text)} />
        </div>
        <p role="alert" className="error-text">
          {says}
        </p>
        {sites !== null && sites.size > 1 && (
          <nav className="floor-buttons">
            <Link className="floor-plain" href="/floor/send">
              {floorBench.sites.send}
            </Link>
            <Link className="floor-plain" href="/floor/arrive">
              {floorBench.sites.arrive}
            </Link>
          </nav>
        )}
        <fieldset className="floor-tabs">
          <legend className="visually-hidden">{floor.pick.title}</legend>
          {KINDS.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={one === kind}
              onClick={() => {
                setKind(one);
                setChosen([]);
                sessionStorage.setItem(KIND, one);
              }}
            >
              {floor.pick.kinds[one]}
            </button>
          ))}
        </fieldset>
        {kind !== "machine" && (
          <label className="floor-several">
            <input
              type="checkbox"
              checked={several}
              onChange={(event) => {
                setSeveral(event.currentTarget.checked);
                setChosen([]);
              }}
            />
            {floor.pick.several}
          </label>
        )}
        {units === null ? (
          <p className="dim">{floor.pick.unknownList}</p>
        ) : (
          <UnitTiles units={ofKind} kind={kind} chosen={chosen} choose={choose} />
        )}
      </div>
      {several && chosen.length > 0 && (
        <footer className="floor-foot">
          <button
            type="button"
            className="floor-main"
            onClick={() => goTo(workAddress(chosen.map(({ unit }) => unit)))}
          >
            {floor.pick.start(chosen.length)}
          </button>
        </footer>
      )}
    </main>
  );
}

function byType(units: readonly KeptUnit[]): ReadonlyMap<string, readonly KeptUnit[]> {
  const groups = new Map<string, KeptUnit[]>();
  for (const unit of units) groups.set(unit.type, [...(groups.get(unit.type) ?? []), unit]);
  return groups;
}

/** Units by their types, each as large as a gloved finger; those of this tablet first. */
function UnitTiles({
  units,
  kind,
  chosen,
  choose,
}: {
  readonly units: readonly KeptUnit[];
  readonly kind: UnitKind;
  readonly chosen: readonly KeptUnit[];
  readonly choose: (unit: KeptUnit) => void;
}) {
  const { floor } = useWords();
  const pick = usePick();
  const types = useView("floorTypes", null);
  const last = useMemo(keptLast, []);
  const groups = useMemo(() => byType(units), [units]);
  if (units.length === 0) return <p>{floor.pick.none[kind]}</p>;
  const lately = last.flatMap((id) => units.find(({ unit }) => unit === id) ?? []);
  const nameOf = (type: string): string => {
    const known = types?.get(kind === "machine" ? kind : `${kind} ${type}`);
    return known === undefined ? type : pick(known.label, known.labelZh) || type;
  };
  const tile = (unit: KeptUnit, name: string | null) => (
    <button
      key={unit.unit}
      type="button"
      aria-pressed={chosen.some((one) => one.unit === unit.unit)}
      onClick={() => choose(unit)}
    >
      {unit.unit}
      {name !== null && <small>{name}</small>}
    </button>
  );
  return (
    <>
      {lately.length > 0 && (
        <section>
          <h2>{floor.pick.last}</h2>
          <div className="floor-tiles">{lately.map((unit) => tile(unit, nameOf(unit.type)))}</div>
        </section>
      )}
      {[...groups].map(([type, own]) => (
        <section key={type}>
          <h2>
            {nameOf(type)} <small className="dim">{floor.pick.of(own.length)}</small>
          </h2>
          <div className="floor-tiles">{own.map((unit) => tile(unit, null))}</div>
        </section>
      ))}
    </>
  );
}

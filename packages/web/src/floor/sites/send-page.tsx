import { pathTo } from "@pinwright/contract";
import { IconPrinter, IconX } from "@tabler/icons-react";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { useHere } from "../shell/at-place.tsx";
import { CameraScan } from "../shell/camera.tsx";
import { FloorHead } from "../shell/head.tsx";
import { unitInCode } from "../shell/scan.ts";
import { useScanner } from "../shell/use-scanner.ts";
import { stacksAt, transportId } from "./load.ts";
import { SitePick, useSiteName } from "./site-pick.tsx";
import { useStanding } from "./use-standing.ts";

/** Loads a transport to another workshop: scanned one by one, or a whole kind at once. */
export function SendPage() {
  const { words } = useSpeech();
  const own = words.floorBench.sites;
  const { site } = useHere();
  const siteName = useSiteName();
  const sites = useView("floorSites", null);
  const others = [...(sites?.keys() ?? [])].filter((id) => id !== site);
  const [chosen, setTo] = useState<string | null>(null);
  const to = chosen ?? (others.length === 1 ? (others[0] ?? null) : null);
  const [load, setLoad] = useState<readonly string[]>([]);
  const [says, setSays] = useState("");
  const [sent, setSent] = useState<string | null>(null);
  const { write } = useDevice();
  const standing = useStanding();
  const units = Array.isArray(standing) ? standing : [];
  const add = (text: string): void => {
    const id = unitInCode(text);
    const unit = units.find((one) => one.unit === id);
    if (id === null) setSays(words.floor.pick.unknown(text.trim().slice(0, 60)));
    else if (load.includes(id)) setSays(own.already(id));
    else if (unit?.within != null) setSays(own.within(id, unit.within.unit));
    else {
      // What is on the way by the records and stands here all the same goes on: the records are late.
      setSays(unit?.onTheWay != null ? own.onTheWay(id) : "");
      setLoad([id, ...load]);
    }
  };
  useScanner(add);
  const send = async (): Promise<void> => {
    if (to === null) return;
    const transport = transportId(new Date(), (bytes) => crypto.getRandomValues(new Uint8Array(bytes)));
    try {
      await write([...load].reverse().map((unit) => ({ kind: "sent", unit, transport, to })));
      setSent(transport);
    } catch (error) {
      setSays(`${words.floor.work.failedSave} ${String(error)}`);
    }
  };
  if (sent !== null)
    return (
      <Sent
        transport={sent}
        count={load.length}
        another={() => {
          setSent(null);
          setLoad([]);
          setTo(null);
        }}
      />
    );
  return (
    <main className="floor-page">
      <FloorHead back="/floor">
        <h1>{own.sendTitle}</h1>
      </FloorHead>
      <div className="floor-body">
        <h2>{own.to}</h2>
        <SitePick ids={others} chosen={to} choose={setTo} />
        <div className="floor-title">
          <p>{own.scan}</p>
          <CameraScan scanned={add} />
        </div>
        <p role="alert" className="error-text">
          {says}
        </p>
        <Stacks
          stacks={stacksAt(units, site)}
          load={load}
          add={(unitIds) => setLoad([...unitIds.filter((id) => !load.includes(id)), ...load])}
        />
        <h2 role="status">{load.length === 0 ? own.none : own.loaded(load.length)}</h2>
        <ul className="floor-refs">
          {load.map((unit) => (
            <li key={unit}>
              <button
                type="button"
                aria-label={own.takeOff(unit)}
                onClick={() => setLoad(load.filter((one) => one !== unit))}
              >
                {unit} <IconX size={22} aria-hidden />
              </button>
            </li>
          ))}
        </ul>
      </div>
      <footer className="floor-foot">
        <button
          type="button"
          className="floor-main"
          disabled={to === null || load.length === 0}
          onClick={() => void send()}
        >
          {own.go(load.length, to === null ? "…" : siteName(to))}
        </button>
      </footer>
    </main>
  );
}

function Stacks({
  stacks,
  load,
  add,
}: {
  readonly stacks: ReturnType<typeof stacksAt>;
  readonly load: readonly string[];
  readonly add: (unitIds: readonly string[]) => void;
}) {
  const own = useSpeech().words.floorBench.sites;
  const pick = usePick();
  const types = useView("floorTypes", null);
  const nameOf = (what: string, type: string): string => {
    const known = types?.get(what === "machine" ? what : `${what} ${type}`);
    return known === undefined ? type : pick(known.label, known.labelZh) || type;
  };
  const left = stacks.flatMap((stack) => {
    const unitIds = stack.unitIds.filter((id) => !load.includes(id));
    return unitIds.length === 0 ? [] : [{ ...stack, unitIds }];
  });
  return (
    <div className="floor-tiles floor-small-tiles">
      {left.map(({ what, type, unitIds }) => (
        <button key={`${what} ${type}`} type="button" onClick={() => add(unitIds)}>
          {nameOf(what, type)}
          <small>{own.all(unitIds.length)}</small>
        </button>
      ))}
    </div>
  );
}

function Sent({
  transport,
  count,
  another,
}: {
  readonly transport: string;
  readonly count: number;
  readonly another: () => void;
}) {
  const { words, language } = useSpeech();
  const own = words.floorBench.sites;
  const { book } = useHere();
  const { sending } = useDevice();
  return (
    <main className="floor-page">
      <FloorHead back="/floor">
        <h1>{own.sendTitle}</h1>
      </FloorHead>
      <div className="floor-body floor-end">
        <h1>{own.sent(transport)}</h1>
        <p className="floor-figure">{own.loaded(count)}</p>
        {sending.state === "sent" ? (
          <a
            className="floor-plain"
            href={pathTo("transportList", {}, { book, language, transport })}
            target="_blank"
            rel="noreferrer"
          >
            <IconPrinter size={26} aria-hidden /> {own.list}
          </a>
        ) : (
          <p className="amber-text">{own.listAway}</p>
        )}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-main" onClick={another}>
          {own.another}
        </button>
      </footer>
    </main>
  );
}

import { Button } from "@mantine/core";
import { IconMapPin } from "@tabler/icons-react";
import { useEffect, useRef, useState } from "react";
import { Link, useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { usePick, useWords } from "../words.tsx";
import { ShareScale } from "./currents/share-mark.tsx";
import { type Cavity, EntrySideNote, type Housing, HousingTitle, HousingView } from "./housing-view.tsx";
import { WiringLink } from "./links.tsx";
import { WireColour } from "./wire-colour.tsx";

/** A board, device, mechanism or in-line connector: every housing and terminal of it, with what is in them. */
export function ItemDetail({
  itemId,
  landingId,
  pointId,
}: {
  readonly itemId: string;
  /** The landing to bring into sight, and the point to light up. */
  readonly landingId: string | null;
  readonly pointId: string | null;
}) {
  const { wiring: words, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const [, go] = useLocation();
  const [over, setOver] = useState<string | null>(null);
  const housings = useView("housings", { of: "item", id: itemId });
  const carrier = useView("carriers", null)?.get(itemId);
  const conductors = useView("electricConductors", { of: "item", id: itemId });
  const list = [...(housings?.values() ?? [])];
  const lit = { pointId, wireId: over };
  if (housings === null) return <p className="dim">{common.loading}</p>;
  const label = carrier?.label ?? list[0]?.item;
  return (
    <article>
      <header className="detail-head">
        <h2>{itemId}</h2>
        <span>{label === undefined ? "" : pick(label.en, label.zh)}</span>
        <span style={{ flex: 1 }} />
        <Button
          component={Link}
          href={addressOf(bookId, { kind: "item", id: itemId })}
          variant="default"
          leftSection={<IconMapPin size={18} />}
        >
          {words.showItem}
        </Button>
      </header>
      {carrier !== undefined && (
        <p className="dim">
          {pick(carrier.type.en, carrier.type.zh)} · {words.on} {carrier.panelId}, {common.side[carrier.side]}
        </p>
      )}
      <EntrySideNote housings={list} />
      {list.length === 0 && <p className="dim">{words.nothingHere}</p>}
      {conductors !== null && conductors.size > 0 && <ShareScale />}
      {list.map((housing) => (
        <LandingSection
          key={housing.landingId}
          housing={housing}
          shareOf={(pointId) => conductors?.get(pointId)?.share ?? null}
          inSight={housing.landingId === landingId}
          lit={lit}
          onHover={setOver}
          onPoint={(cavity) => go(`${addressOf(bookId, { kind: "connector", id: cavity.pointId })}`)}
        />
      ))}
    </article>
  );
}

function LandingSection({
  housing,
  shareOf,
  inSight,
  lit,
  onHover,
  onPoint,
}: {
  readonly housing: Housing;
  readonly shareOf: (pointId: string) => number | null;
  readonly inSight: boolean;
  readonly lit: { readonly pointId: string | null; readonly wireId: string | null };
  readonly onHover: (wireId: string | null) => void;
  readonly onPoint: (cavity: Cavity) => void;
}) {
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    if (inSight) section.current?.scrollIntoView({ block: "nearest" });
  }, [inSight]);
  return (
    <section ref={section} className="landing">
      <HousingTitle housing={housing} />
      <HousingView housing={housing} shareOf={shareOf} lit={lit} onPoint={onPoint} onHover={onHover} />
      <PinTable housing={housing} pointId={lit.pointId} />
    </section>
  );
}

interface PinRow {
  readonly cavity: Cavity;
  readonly wire: Cavity["wires"][number] | null;
}

/** The same as a list: a row for each wire, and one for each cavity that has none. */
function PinTable({ housing, pointId }: { readonly housing: Housing; readonly pointId: string | null }) {
  const words = useWords().wiring;
  const pick = usePick();
  const rows = housing.cavities.flatMap((cavity): readonly PinRow[] =>
    cavity.wires.length === 0 ? [{ cavity, wire: null }] : cavity.wires.map((wire) => ({ cavity, wire })),
  );
  return (
    <DataTable
      caption={housing.landingId}
      rows={rows}
      rowKey={({ cavity, wire }) => `${cavity.pointId} ${wire?.id ?? ""}`}
      isCurrent={({ cavity }) => cavity.pointId === pointId}
      columns={[
        {
          key: "cavity",
          header: housing.isHousing ? words.cavity : words.terminal,
          value: ({ cavity }) => cavity.name,
          cell: ({ cavity }) => <WiringLink id={cavity.pointId} text={cavity.name} />,
        },
        { key: "use", header: words.carries, value: ({ cavity }) => cavity.use, minor: true },
        {
          key: "net",
          header: words.net,
          value: ({ cavity }) => cavity.netId ?? "",
          cell: ({ cavity }) =>
            cavity.netId === null ? (
              <span className="dim">{words.cavityStates[cavity.state]}</span>
            ) : (
              <>
                <WiringLink id={cavity.netId} />
                <small>{pick(cavity.net.en, cavity.net.zh)}</small>
              </>
            ),
        },
        {
          key: "wire",
          header: words.wire,
          value: ({ wire }) => wire?.printed ?? "",
          cell: ({ wire }) =>
            wire === null ? (
              "–"
            ) : (
              <span className="wire-no">
                <WiringLink id={wire.id} text={wire.printed} />
              </span>
            ),
        },
        {
          key: "colour",
          header: words.colour,
          value: ({ wire }) => wire?.colour ?? "",
          cell: ({ wire }) => (wire === null ? "" : <WireColour code={wire.colour} />),
        },
        {
          key: "to",
          header: words.to,
          value: ({ wire }) => wire?.otherEnd ?? "",
          cell: ({ wire }) => {
            if (wire === null) return "";
            if (wire.otherEnd.startsWith("splice:"))
              return words.splice(wire.otherEnd.slice(wire.otherEnd.lastIndexOf(":") + 1));
            return <WiringLink id={wire.otherEnd} />;
          },
        },
      ]}
    />
  );
}

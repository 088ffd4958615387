import { NativeSelect } from "@mantine/core";
import { IconArrowLeft } from "@tabler/icons-react";
import { lazy, Suspense, useEffect, useState } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import { ItemDetail } from "./item-detail.tsx";
import { NetDetail } from "./net-detail.tsx";
import { PickList } from "./pick-list.tsx";
import { WAYS, type Way, Ways } from "./ways.tsx";
import { WireDetail } from "./wire-detail.tsx";
import "./wiring.css";

const CurrentsPage = lazy(() => import("./currents/currents-page.tsx"));

type Place = ViewEntry<"wiringPlace">;
type ListWay = Exclude<Way, "currents">;

/** The list that a place belongs to. */
function wayOf(place: Place | undefined): ListWay {
  if (place === undefined || place.kind === "net" || place.kind === "wire") return "nets";
  return place.itemKind === "board" || place.itemKind === "inline" ? "boards" : "devices";
}

/** Wiring: what is joined with what, and what flows there. */
export default function WiringPage() {
  const { common } = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, way] = location.slice(`/b/${bookId}/wiring`.length).split("/");
  if (way !== "currents") return <WiringLists asked={WAYS.find((one) => one === way)} />;
  return (
    <Suspense fallback={<p className="page dim">{common.loading}</p>}>
      <CurrentsPage />
    </Suspense>
  );
}

/** Three ways in at the left, and what was chosen beside them. */
function WiringLists({ asked }: { readonly asked: Way | undefined }) {
  const { wiring: words, shell, common } = useWords();
  const { bookId } = useDesk();
  const [search] = useSearchParams();
  const id = search.get("id");
  const places = useView("wiringPlace", id ?? "");
  const place = places?.get("");
  const way = asked === undefined || asked === "currents" ? wayOf(place) : asked;
  const base = `/b/${bookId}/wiring`;
  useEffect(() => {
    document.title = `${id ?? shell.sections.wiring} · Pinwright`;
  }, [id, shell]);
  return (
    <div className="wiring" data-chosen={id === null ? undefined : ""}>
      <div className="wiring-lists">
        <Ways current={way} />
        {way === "nets" ? (
          <NetList base={base} currentId={place?.netId ?? null} />
        ) : (
          <CarrierList base={base} way={way} currentId={place?.itemId ?? null} />
        )}
      </div>
      <section className="wiring-detail" aria-label={id ?? words.choose[way]}>
        {id !== null && (
          <Link href={`${base}/${way}`} className="wiring-back">
            <IconArrowLeft size={18} /> {words.back}
          </Link>
        )}
        {id === null ? (
          <p className="dim">{words.choose[way]}</p>
        ) : places === null ? (
          <p className="dim">{common.loading}</p>
        ) : place === undefined ? (
          <p>{words.unknown(id)}</p>
        ) : (
          <Detail place={place} />
        )}
      </section>
    </div>
  );
}

function Detail({ place }: { readonly place: Place }) {
  switch (place.kind) {
    case "wire":
      return <WireDetail id={place.id} />;
    case "net":
      return <NetDetail id={place.id} />;
    default:
      return (
        <ItemDetail
          itemId={place.itemId ?? place.id}
          landingId={place.landingId}
          pointId={place.kind === "point" ? place.id : null}
        />
      );
  }
}

function NetList({ base, currentId }: { readonly base: string; readonly currentId: string | null }) {
  const words = useWords().wiring;
  const pick = usePick();
  const nets = useView("nets", null);
  const [netClass, setClass] = useState("");
  if (nets === null) return null;
  if (nets.size === 0) return <p>{words.empty.nets}</p>;
  const all = [...nets.values()];
  const classes = [...new Set(all.map((net) => net.class))];
  return (
    <PickList
      label={words.ways.nets}
      currentId={currentId}
      tools={
        <NativeSelect
          aria-label={words.class}
          value={netClass}
          onChange={(event) => setClass(event.currentTarget.value)}
          data={[
            { value: "", label: words.allClasses },
            ...classes.map((one) => ({ value: one, label: words.classes[one] })),
          ]}
        />
      }
      lines={all
        .filter((net) => netClass === "" || net.class === netClass)
        .map((net) => ({
          id: net.id,
          href: `${base}/nets?id=${encodeURIComponent(net.id)}`,
          title: net.id,
          detail: [
            pick(net.label.en, net.label.zh),
            words.classes[net.class],
            net.supply ?? "",
            words.ends(net.ends),
            words.wires(net.wires),
          ]
            .filter(Boolean)
            .join(" · "),
          text: `${net.id} ${net.label.en} ${net.label.zh} ${net.supply ?? ""}`,
        }))}
    />
  );
}

function CarrierList({
  base,
  way,
  currentId,
}: {
  readonly base: string;
  readonly way: "boards" | "devices";
  readonly currentId: string | null;
}) {
  const words = useWords().wiring;
  const pick = usePick();
  const carriers = useView("carriers", null);
  if (carriers === null) return null;
  const own = [...carriers.values()].filter((one) => (one.kind === "device") === (way === "devices"));
  if (own.length === 0) return <p>{words.empty[way]}</p>;
  return (
    <PickList
      label={words.ways[way]}
      currentId={currentId}
      lines={own.map((one) => ({
        id: one.id,
        href: `${base}/${way}?id=${encodeURIComponent(one.id)}`,
        title: one.id,
        detail: [pick(one.label.en, one.label.zh), pick(one.type.en, one.type.zh)]
          .filter((text, i, texts) => text !== "" && texts.indexOf(text) === i)
          .join(" · "),
        text: `${one.id} ${one.label.en} ${one.label.zh} ${one.type.en} ${one.type.zh} ${one.landings.map((landing) => landing.id).join(" ")}`,
      }))}
    />
  );
}

import type { ThingPin, ThingWire } from "@pinwright/engine";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { usePick, useWords } from "../../words.tsx";
import { thingAddress } from "../address.ts";

function EndLink({ end }: { readonly end: ThingWire["a"] }) {
  const { bookId } = useDesk();
  const pick = usePick();
  const { id, item } = end;
  return (
    <>
      <Link href={thingAddress(bookId, id)}>{id}</Link>
      {item !== null && <small className="dim quality-under">{pick(item.labels.en, item.labels.zh)}</small>}
    </>
  );
}

function WireCells({ wire }: { readonly wire: ThingWire }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  return (
    <>
      <td>
        <Link href={thingAddress(bookId, wire.id)}>{wire.number}</Link>
      </td>
      <td>{wire.colour}</td>
      <td className="end">{own.mm2(wire.areaMm2)}</td>
      <td className="end">{own.mm(wire.lengthMm)}</td>
    </>
  );
}

/** Every pin with its net, and each wire there with its colour, length and far end. */
export function Pins({ pins }: { readonly pins: readonly ThingPin[] }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const pick = usePick();
  if (pins.length === 0) return null;
  const pinName = (pin: ThingPin): string => [pin.id, pin.label].filter(Boolean).join(" · ");
  return (
    <TableScroll>
      <table className="plain thing-pins">
        <caption>{own.pins}</caption>
        <thead>
          <tr>
            <th scope="col">{own.columns.pin}</th>
            <th scope="col">{own.columns.net}</th>
            <th scope="col">{own.columns.wire}</th>
            <th scope="col">{own.columns.colour}</th>
            <th scope="col" className="end">
              {own.columns.area}
            </th>
            <th scope="col" className="end">
              {own.columns.length}
            </th>
            <th scope="col">{own.columns.to}</th>
          </tr>
        </thead>
        <tbody>
          {pins.flatMap((pin) =>
            (pin.wires.length === 0 ? [null] : pin.wires).map((wire, n) => (
              <tr key={`${pin.id} ${wire?.id ?? ""}`}>
                <th scope="row">
                  {n === 0 ? <Link href={thingAddress(bookId, pin.id)}>{pinName(pin)}</Link> : pinName(pin)}
                </th>
                <td>
                  {pin.net === null ? (
                    pin.use !== "live" && own[pin.use]
                  ) : (
                    <Link href={thingAddress(bookId, pin.net.id)} title={pin.net.id}>
                      {pick(pin.net.labels.en, pin.net.labels.zh) || pin.net.id}
                    </Link>
                  )}
                </td>
                {wire === null ? (
                  <td colSpan={5} />
                ) : (
                  <>
                    <WireCells wire={wire} />
                    <td>
                      <EndLink end={wire.b} />
                    </td>
                  </>
                )}
              </tr>
            )),
          )}
        </tbody>
      </table>
    </TableScroll>
  );
}

/** Wires with both ends. */
export function Wires({ wires }: { readonly wires: readonly ThingWire[] }) {
  const own = useWords().serviceThing;
  if (wires.length === 0) return null;
  return (
    <TableScroll>
      <table className="plain thing-pins">
        <caption>{own.wires}</caption>
        <thead>
          <tr>
            <th scope="col">{own.columns.wire}</th>
            <th scope="col">{own.columns.colour}</th>
            <th scope="col" className="end">
              {own.columns.area}
            </th>
            <th scope="col" className="end">
              {own.columns.length}
            </th>
            <th scope="col">{own.columns.from}</th>
            <th scope="col">{own.columns.to}</th>
          </tr>
        </thead>
        <tbody>
          {wires.map((wire) => (
            <tr key={wire.id}>
              <WireCells wire={wire} />
              <td>
                <EndLink end={wire.a} />
              </td>
              <td>
                <EndLink end={wire.b} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

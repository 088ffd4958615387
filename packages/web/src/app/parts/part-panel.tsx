import { CloseButton } from "@mantine/core";
import { decimal } from "@pinwright/kernel";
import { findingWords } from "@pinwright/words";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { subjectAddress } from "../findings/address.ts";
import { outsideAddress } from "../outside/address.ts";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { nodeAddress, tabAddress } from "./address.ts";
import { priceText, quantityText } from "./amounts.ts";
import type { BillNodes } from "./bill-rows.ts";
import { TableScroll } from "./table-scroll.tsx";
import { TotalText } from "./total-text.tsx";

type About = ViewEntry<"partAbout">;

/** One thing of the bill: what it is, what it costs and from whom, what is called out, and where it is used. */
export function PartPanel({
  id,
  nodes,
  costs,
  flags,
  choose,
  goInto,
}: {
  readonly id: string;
  readonly nodes: BillNodes;
  readonly costs: ReadonlyMap<string, ViewEntry<"billCosts">> | null;
  readonly flags: ReadonlyMap<string, ViewEntry<"partFlags">> | null;
  readonly choose: (id: string | null) => void;
  readonly goInto: (id: string) => void;
}) {
  const { words: all, language } = useSpeech();
  const words = all.parts;
  const pick = usePick();
  const { bookId } = useDesk();
  const entries = useView("partAbout", { id });
  const node = nodes.get(id);
  const about = entries?.get("");
  const cost = costs?.get(id);
  const flagged = flags?.get(id);
  const name =
    node === undefined
      ? pick(about?.part?.label ?? "", about?.part?.label_zh ?? "")
      : pick(node.label, node.labelZh);
  const place = node === undefined ? null : nodeAddress(bookId, id, node.kind);
  const partId = about?.part?.id;
  return (
    <section className="part-panel" aria-label={name || id}>
      <header>
        <h3>{name || id}</h3>
        <CloseButton aria-label={all.common.close} onClick={() => choose(null)} />
      </header>
      <p className="dim">
        {id} {node !== undefined && `· ${words.kinds[node.kind]}`}
      </p>
      {entries !== null && about === undefined && <p>{words.noSuchPart(id)}</p>}
      <p className="way-links">
        {place !== null && node !== undefined && <Link href={place}>{words.toPlace[node.kind]}</Link>}
        {partId !== undefined && partId !== id && (
          <Link href={`/b/${bookId}/tables/parts?id=${encodeURIComponent(partId)}`}>
            {words.toPlace.part}
          </Link>
        )}
        {node !== undefined && node.inside.length > 0 && (
          <button type="button" className="link-button" onClick={() => goInto(id)}>
            {words.contents}
          </button>
        )}
        {partId !== undefined && (
          <Link href={tabAddress(bookId, "ways", { id: partId })}>{words.tabs.ways}</Link>
        )}
        {partId !== undefined && (
          <Link href={tabAddress(bookId, "stock", { id: partId })}>{words.tabs.stock}</Link>
        )}
        {about?.part != null && about.part.source !== "buy" && (
          <Link href={outsideAddress(bookId, about.part.id)}>{words.tabs.outside}</Link>
        )}
      </p>
      {flagged?.flags.map(({ rule, finding }) => (
        <p key={rule} className={`said ${finding.severity}`}>
          <b>{findingWords(language, rule).title}</b>
          <br />
          {findingWords(language, rule).say(finding)}{" "}
          <span className="dim">{findingWords(language, rule).todo}</span>
        </p>
      ))}
      {cost !== undefined && (
        <dl className="facts">
          <div>
            <dt>{words.costEach}</dt>
            <dd>
              <TotalText total={cost.each} currency={cost.currency} isPrice />
            </dd>
          </div>
          <div>
            <dt>{words.costMachine}</dt>
            <dd>
              <TotalText total={cost.ofMachine} currency={cost.currency} />
            </dd>
          </div>
          {cost.source !== null && (
            <div>
              <dt>{words.source}</dt>
              <dd>
                {words.sources[cost.source.kind]}
                {cost.source.supplier !== null &&
                  ` · ${pick(cost.source.supplier.label, cost.source.supplier.labelZh) || cost.source.supplier.id}`}
              </dd>
            </div>
          )}
        </dl>
      )}
      {about !== undefined && <Facts about={about} />}
      {about !== undefined && <Prices about={about} cost={cost} />}
      {about !== undefined && <WhereUsed about={about} unit={node?.unit ?? "each"} choose={choose} />}
    </section>
  );
}

function Facts({ about: { part } }: { readonly about: About }) {
  const words = useWords().parts;
  if (part === null) return null;
  const facts = [
    [words.facts.value, part.value],
    [words.facts.revision, part.revision],
    [words.facts.material, part.material],
    [words.facts.thickness, part.thickness_mm === null ? "" : `${part.thickness_mm} mm`],
    [words.facts.finish, part.finish],
    [words.facts.mass, part.mass_g === null ? "" : `${part.mass_g} g`],
    [words.facts.orderNumber, part.order_number],
    [words.facts.wear, part.wear ? words.facts.wears : ""],
    [words.facts.fails, part.fails_per_year === null ? "" : words.facts.perYear(part.fails_per_year)],
  ].filter(([, value]) => value !== "");
  return (
    <dl className="facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function Prices({
  about,
  cost,
}: {
  readonly about: About;
  readonly cost: ViewEntry<"billCosts"> | undefined;
}) {
  const words = useWords();
  const own = words.parts;
  const pick = usePick();
  const { bookId } = useDesk();
  const { part, prices } = about;
  if (part === null) return null;
  const source = cost?.source;
  return (
    <>
      <h4>{own.prices}</h4>
      {prices.length === 0 ? (
        <p className="dim">
          {own.noPrices} <Link href={`/b/${bookId}/tables/prices`}>{words.tableNames.tables.prices}</Link>
        </p>
      ) : (
        <TableScroll>
          <table className="plain">
            <caption className="visually-hidden">{own.prices}</caption>
            <thead>
              <tr>
                <th scope="col">{own.supplier}</th>
                <th scope="col" className="end">
                  {own.from}
                </th>
                <th scope="col" className="end">
                  {own.price}
                </th>
                <th scope="col" className="end">
                  {own.pack}
                </th>
                <th scope="col" className="end">
                  {own.lead}
                </th>
              </tr>
            </thead>
            <tbody>
              {prices.map((price) => {
                const holds =
                  source?.supplier?.id === price.supplier?.id &&
                  source?.fromQuantity === decimal(price.fromQuantity);
                return (
                  <tr
                    key={`${price.supplier?.id} ${price.fromQuantity}`}
                    aria-current={holds ? "true" : undefined}
                  >
                    <th scope="row">
                      {pick(price.supplier?.label ?? "", price.supplier?.labelZh ?? "") || price.supplier?.id}
                      {holds && <small>{own.holds}</small>}
                    </th>
                    <td className="end">{quantityText(decimal(price.fromQuantity), part.unit)}</td>
                    <td className="end">{priceText(decimal(price.price), price.currency)}</td>
                    <td className="end">{quantityText(decimal(price.pack), part.unit)}</td>
                    <td className="end">{own.days(price.leadDays)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </TableScroll>
      )}
    </>
  );
}

function WhereUsed({
  about: { usedIn },
  unit,
  choose,
}: {
  readonly about: About;
  readonly unit: string;
  readonly choose: (id: string) => void;
}) {
  const words = useWords().parts;
  const pick = usePick();
  const { bookId } = useDesk();
  return (
    <>
      <h4>{words.whereUsed}</h4>
      {usedIn.length === 0 && <p className="dim">{words.usedNowhere}</p>}
      <ul className="used-in">
        {usedIn.map((use) => (
          <li key={`${use.id} ${use.why} ${use.colour}`}>
            <div className="used-head">
              <button type="button" className="link-button" onClick={() => choose(use.id)}>
                {pick(use.label, use.labelZh) || use.id}
              </button>
              <span>
                {words.why[use.why]} {use.colour !== "" && <WireColour code={use.colour} />}
              </span>
              <b>{quantityText(use.quantity, unit)}</b>
              {use.total !== null && use.total !== use.quantity && (
                <span className="dim">{words.ofMachine(quantityText(use.total, unit))}</span>
              )}
            </div>
            {use.count > 0 && (
              <details>
                <summary>{words.places(use.count)}</summary>
                <p className="used-places">
                  {use.places.map((place) => {
                    const address = subjectAddress(bookId, place);
                    const name = pick(place.label, place.labelZh) || place.id;
                    return address === null ? (
                      <span key={place.id}>{name}</span>
                    ) : (
                      <Link key={place.id} href={address} title={place.id}>
                        {name}
                      </Link>
                    );
                  })}
                  {use.count > use.places.length && (
                    <span className="dim">{words.andMore(use.count - use.places.length)}</span>
                  )}
                </p>
              </details>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

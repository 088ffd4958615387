import { Popover } from "@mantine/core";
import type { Total } from "@pinwright/engine";
import type { Decimal } from "@pinwright/kernel";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { partAddress } from "./address.ts";
import { amountText, fullText, moneyText, priceText } from "./amounts.ts";

/** Things that a total lacks and that are named before the rest is only counted. */
const NAMED = 30;

/** An amount of money, rounded for reading; every digit is a hover away. */
export function Money({
  value,
  currency,
  isPrice = false,
  isBare = false,
}: {
  readonly value: Decimal;
  readonly currency: string;
  /** Of one thing, which may be small. */
  readonly isPrice?: boolean;
  /** Its currency stands above. */
  readonly isBare?: boolean;
}) {
  return (
    <span className="amount" title={fullText(value, currency)}>
      {(isBare ? amountText : isPrice ? priceText : moneyText)(value, currency)}
    </span>
  );
}

/** A total; what is not in it is said beside the number, and a tap names it. */
export function TotalText({
  total,
  currency,
  isPrice = false,
  isBare = false,
}: {
  readonly total: Total;
  readonly currency: string;
  readonly isPrice?: boolean;
  readonly isBare?: boolean;
}) {
  const words = useWords().parts;
  const { missing } = total;
  return (
    <span className="total">
      <Money value={total.value} currency={currency} isPrice={isPrice} isBare={isBare} />
      {missing.length > 0 && (
        <Popover position="bottom-end" withinPortal width={320} trapFocus>
          <Popover.Target>
            <button type="button" className="lacks">
              {words.lacks(missing.length)}
            </button>
          </Popover.Target>
          <Popover.Dropdown>
            <Lacking total={total} />
          </Popover.Dropdown>
        </Popover>
      )}
    </span>
  );
}

function Lacking({ total: { missing } }: { readonly total: Total }) {
  const words = useWords().parts;
  const { bookId } = useDesk();
  return (
    <>
      <p className="lacks-about">{words.lacksAbout}</p>
      <ul className="lacks-list">
        {missing.slice(0, NAMED).map(({ lack, id }) => (
          <li key={`${lack} ${id}`}>
            <Link href={partAddress(bookId, id)}>{id}</Link> <span>{words.lackNames[lack]}</span>
          </li>
        ))}
      </ul>
      {missing.length > NAMED && <p className="dim">{words.andMore(missing.length - NAMED)}</p>}
    </>
  );
}

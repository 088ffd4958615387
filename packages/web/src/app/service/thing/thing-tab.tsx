import { Autocomplete, Button } from "@mantine/core";
import { type FormEvent, useEffect, useState } from "react";
import { Link, useLocation } from "wouter";
import { unitAddress } from "../../bench/address.ts";
import { useDesk, useOne, useSync } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { thingAddress } from "../address.ts";
import { Recording } from "../recording.tsx";
import { ThingPage } from "./thing-page.tsx";
import "../../bench/bench.css";
import "../../bench/defects/defects.css";
import "./thing.css";

/** Everything of one thing, found by any id, number or name. */
export default function ThingTab() {
  return (
    <Recording>
      <div className="currents-body bench thing">
        <Body />
      </div>
    </Recording>
  );
}

function Body() {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [, , asked] = location.slice(`/b/${bookId}/service`.length).split("/");
  const id = decodeURIComponent(asked ?? "");
  return (
    <>
      <Ask key={`ask ${id}`} id={id} />
      {id === "" ? (
        <>
          <h2>{own.title}</h2>
          <p>{own.about}</p>
          <p className="dim">{own.empty}</p>
        </>
      ) : (
        <Asked key={id} id={id} />
      )}
    </>
  );
}

/** Serial numbers of units begin with the letter of their kind. */
const UNIT = /^[mbha]-\d{4,}$/u;
/** `harness.kind.language`, as sheets are named. */
const SHEET = /\.(?:en|zh)$/u;

function Asked({ id }: { readonly id: string }) {
  const { serviceThing: own, common } = useWords();
  const { bookId } = useDesk();
  const sync = useSync();
  const page = useOne("thing", { id });
  if (page !== undefined) return <ThingPage page={page} asked={id} />;
  if (UNIT.test(id))
    return (
      <>
        <h2>
          {own.unit} {id}
        </h2>
        <p>
          <Link href={unitAddress(bookId, id)}>{own.unitPage(id)}</Link>
        </p>
      </>
    );
  if (SHEET.test(id))
    return (
      <>
        <h2>
          {own.sheet} {id}
        </h2>
        <p>
          <Link href={`/b/${bookId}/sheets`}>{own.sheetPage}</Link>
        </p>
      </>
    );
  return sync.state === "loading" ? (
    <p className="dim">{common.loading}</p>
  ) : (
    <>
      <h2>{own.noSuch(id)}</h2>
      <Near id={id} />
    </>
  );
}

interface Near {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
}

/** What the search finds for a text. */
function useFound(text: string): readonly Near[] {
  const desk = useDesk();
  const [found, setFound] = useState<readonly Near[]>([]);
  useEffect(() => {
    let wanted = true;
    desk.ask("search", text).then(
      (answer) => wanted && setFound([...new Map(answer.map((one) => [one.id, one])).values()].slice(0, 12)),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [desk, text]);
  return found;
}

/** A number that people call things by is no id: what has it is offered. */
function Near({ id }: { readonly id: string }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const pick = usePick();
  const found = useFound(id);
  if (found.length === 0) return null;
  return (
    <>
      <p>{own.near}</p>
      <ul className="thing-list">
        {found.map((one) => (
          <li key={one.id}>
            <Link href={thingAddress(bookId, one.id)}>{one.id}</Link> {pick(one.label, one.labelZh)}
          </li>
        ))}
      </ul>
    </>
  );
}

function Ask({ id }: { readonly id: string }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const pick = usePick();
  const [, go] = useLocation();
  const [text, setText] = useState(id);
  const found = useFound(text);
  const open = (wanted: string): void => {
    if (wanted.trim() !== "") go(thingAddress(bookId, wanted.trim()));
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    open(text);
  };
  const labelOf = (wanted: string): string => {
    const one = found.find((near) => near.id === wanted);
    return one === undefined ? wanted : `${one.id} · ${pick(one.label, one.labelZh)}`;
  };
  return (
    <search>
      <form className="thing-ask" onSubmit={submit}>
        <Autocomplete
          label={own.ask}
          placeholder={own.askHint}
          value={text}
          data={found.map((one) => one.id)}
          filter={({ options }) => options}
          renderOption={({ option }) => labelOf(option.value)}
          onChange={setText}
          onOptionSubmit={open}
        />
        <Button type="submit" variant="default">
          {own.find}
        </Button>
      </form>
    </search>
  );
}

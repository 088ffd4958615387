import { type BookInfo, SHOP_ID } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { useLocation } from "wouter";
import { call } from "../../api/call.ts";
import { DeskProvider, useView } from "../../app/book/desk.tsx";
import { useMay, useSession } from "../../app/session/session.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { FloorHead } from "../shell/head.tsx";
import { keepPlace, keptPlace } from "../shell/kept-place.ts";
import { LanguageSwitch } from "../shell/language-switch.tsx";

/** Which machine is built here, and at which station this tablet stands. */
export function PlacePage() {
  const { floor } = useWords();
  const pick = usePick();
  const [books, setBooks] = useState<readonly BookInfo[] | null>(null);
  const [book, setBook] = useState(() => keptPlace()?.book ?? null);
  useEffect(() => {
    call("books", { parts: {} }).then(
      (all) => setBooks(all.filter(({ id, archived }) => id !== SHOP_ID && !archived)),
      () => setBooks([]),
    );
  }, []);
  const only = books?.length === 1 ? books[0]?.id : undefined;
  const chosen = books?.find(({ id }) => id === (book ?? only)) ?? null;
  return (
    <main className="floor-page">
      <FloorHead back={keptPlace() === null ? null : "/floor"}>
        <h1>{floor.place.title}</h1>
      </FloorHead>
      <div className="floor-body">
        <div className="floor-title">
          <h2>{floor.place.book}</h2>
          <LanguageSwitch />
        </div>
        {books === null ? (
          <p className="dim">{floor.loading}</p>
        ) : books.length === 0 ? (
          <p>{floor.place.noBooks}</p>
        ) : (
          <div className="floor-tiles">
            {books.map(({ id, label, labelZh }) => (
              <button key={id} type="button" aria-pressed={id === chosen?.id} onClick={() => setBook(id)}>
                {pick(label, labelZh) || id}
              </button>
            ))}
          </div>
        )}
        {chosen !== null && (
          <DeskProvider bookId={chosen.id}>
            <Stations book={chosen.id} />
          </DeskProvider>
        )}
        <ToOffice book={chosen?.id ?? null} />
        <SignOut />
      </div>
    </main>
  );
}

function Stations({ book }: { readonly book: string }) {
  const { floor, floorBench } = useWords();
  const pick = usePick();
  const [, goTo] = useLocation();
  const stations = useView("stations", null);
  const before = keptPlace();
  const sites = useView("floorSites", null);
  const [site, setSite] = useState(() => before?.site ?? "");
  const choose = (station: string): void => {
    keepPlace({ book, station, site });
    goTo("/floor");
  };
  return (
    <>
      {sites !== null && sites.size > 1 && (
        <>
          <h2>{floorBench.sites.where}</h2>
          <div className="floor-tiles floor-small-tiles">
            {[...sites.values()].map(({ id, label, labelZh }) => (
              <button key={id} type="button" aria-pressed={id === site} onClick={() => setSite(id)}>
                {pick(label, labelZh) || id}
              </button>
            ))}
          </div>
        </>
      )}
      <h2>{floor.place.station}</h2>
      {stations === null && <p className="dim">{floor.loading}</p>}
      <div className="floor-tiles">
        <button
          type="button"
          aria-pressed={before?.book === book && before.station === ""}
          onClick={() => choose("")}
        >
          {floor.place.all}
          <small>{floor.place.allHint}</small>
        </button>
        {[...(stations?.values() ?? [])].map(({ id, label, labelZh }) => (
          <button
            key={id}
            type="button"
            aria-pressed={before?.book === book && before.station === id}
            onClick={() => choose(id)}
          >
            {pick(label, labelZh) || id}
          </button>
        ))}
      </div>
    </>
  );
}

/** The way back for whoever leads the work, who also works in the office. */
function ToOffice({ book }: { readonly book: string | null }) {
  const { net } = useWords().floorBench;
  const mayLead = useMay("lead");
  if (!mayLead) return null;
  return (
    <p>
      {/* Another page, with a bundle of its own. */}
      <a className="floor-plain" href={book === null ? "/" : `/b/${encodeURIComponent(book)}/bench`}>
        {net.office}
      </a>
    </p>
  );
}

function SignOut() {
  const { signIn } = useWords().floor;
  const { status, refresh } = useSession();
  if (status.person === null || !status.accounts) return null;
  const leave = async (): Promise<void> => {
    await call("signOut", { parts: {}, token: status.token }).catch(() => undefined);
    await refresh();
  };
  return (
    <p className="floor-who">
      {signIn.works(status.person.name)}
      <button type="button" className="floor-plain" onClick={() => void leave()}>
        {signIn.out}
      </button>
    </p>
  );
}

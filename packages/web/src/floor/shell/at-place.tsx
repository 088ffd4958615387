import { SHOP_ID } from "@pinwright/contract";
import { createContext, type ReactNode, useContext, useMemo, useState } from "react";
import { Redirect } from "wouter";
import { DeskProvider } from "../../app/book/desk.tsx";
import { useKept, useNewVersion } from "../service/use-service.ts";
import { type KeptPlace, keepPlace, keptPlace } from "./kept-place.ts";

interface Here extends KeptPlace {
  /** Opens another machine, for a unit that is of it. */
  readonly openBook: (book: string) => void;
  /** Uses a newer version of this page; null: there is none. */
  readonly takeVersion: (() => void) | null;
}

const HereContext = createContext<Here | null>(null);

/** Opens the machine of the place where this tablet stands; asks for the place before that. */
export function AtPlace({ children }: { readonly children: ReactNode }) {
  const [place, setPlace] = useState(keptPlace);
  return place === null ? (
    <Redirect to="/floor/place" replace />
  ) : (
    <Opened place={place} setPlace={setPlace}>
      {children}
    </Opened>
  );
}

function Opened({
  place,
  setPlace,
  children,
}: {
  readonly place: KeptPlace;
  readonly setPlace: (place: KeptPlace) => void;
  readonly children: ReactNode;
}) {
  const takeVersion = useNewVersion();
  useKept([
    "/api/status",
    "/api/books",
    "/api/units",
    ...[place.book, SHOP_ID].map((book) => `/api/books/${book}/rows`),
  ]);
  const here = useMemo(
    () => ({
      ...place,
      takeVersion,
      openBook: (book: string) => {
        const next = { ...place, book };
        keepPlace(next);
        setPlace(next);
      },
    }),
    [place, setPlace, takeVersion],
  );
  return (
    <HereContext value={here}>
      <DeskProvider bookId={place.book}>{children}</DeskProvider>
    </HereContext>
  );
}

/** Where this tablet stands. */
export function useHere(): Here {
  const here = useContext(HereContext);
  if (here === null) throw new Error("useHere outside of an AtPlace");
  return here;
}

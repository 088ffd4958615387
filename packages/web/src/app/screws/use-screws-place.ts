import { useCallback } from "react";
import { useLocation, useSearchParams } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Side } from "../layout/scene.ts";

/** Where on the screw maps a person is: all of it is in the address. */
export interface ScrewsAt {
  readonly panelId: string;
  readonly side: Side;
  /** Step that is looked at; null: the first. */
  readonly stepId: string | null;
  /** Screw that is picked. */
  readonly screwId: string | null;
  /** Type that is shown up everywhere. */
  readonly typeId: string | null;
}

/** The address of a place on the screw maps; whatever is left out is found from the rest. */
export function screwsAddress(bookId: string, at: Partial<ScrewsAt>): string {
  const params = new URLSearchParams();
  if (at.stepId != null) params.set("step", at.stepId);
  if (at.screwId != null) params.set("id", at.screwId);
  if (at.typeId != null) params.set("type", at.typeId);
  const path =
    at.panelId === undefined
      ? ""
      : `/${encodeURIComponent(at.panelId)}/${at.side === "top" ? "top" : "under"}`;
  const asked = params.toString();
  return `/b/${bookId}/screws${path}${asked === "" ? "" : `?${asked}`}`;
}

/** The address of a step on the screen at the bench. */
export const benchAddress = (bookId: string, placeId: string, stepNumber: number): string =>
  `/b/${bookId}/screws/bench/${encodeURIComponent(placeId)}/${stepNumber}`;

export interface ScrewsPlace {
  readonly panelId: string | null;
  readonly side: Side;
  readonly stepId: string | null;
  readonly screwId: string | null;
  readonly typeId: string | null;
  readonly go: (at: ScrewsAt) => void;
}

export function useScrewsPlace(): ScrewsPlace {
  const { bookId } = useDesk();
  const [path, goTo] = useLocation();
  const [search] = useSearchParams();
  const [, panel, side] = path.slice(`/b/${bookId}/screws`.length).split("/");
  const go = useCallback(
    (at: ScrewsAt) => goTo(screwsAddress(bookId, at), { replace: true }),
    [bookId, goTo],
  );
  return {
    panelId: panel === undefined || panel === "" ? null : decodeURIComponent(panel),
    side: side === "top" ? "top" : "under",
    stepId: search.get("step"),
    screwId: search.get("id"),
    typeId: search.get("type"),
    go,
  };
}

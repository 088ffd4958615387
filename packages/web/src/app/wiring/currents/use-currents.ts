import { useDesk } from "../../book/desk.tsx";

export const TABS = ["supplies", "fuses", "conductors", "loads", "coils", "ladder"] as const;
export type Tab = (typeof TABS)[number];

/** Addresses of Currents, each of which can be sent to others. */
export function useCurrents(): (tab: Tab, id?: string) => string {
  const { bookId } = useDesk();
  return (tab, id) =>
    `/b/${bookId}/wiring/currents/${tab}${id === undefined ? "" : `?id=${encodeURIComponent(id)}`}`;
}

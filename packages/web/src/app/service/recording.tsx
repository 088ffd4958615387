import type { ReactNode } from "react";
import { DeviceProvider } from "../../floor/device.tsx";
import { FactsProvider } from "../bench/live.tsx";
import { NamesProvider } from "../bench/names.tsx";
import { useWords } from "../words.tsx";

/** What pages need that record something and hear of what others do: this browser's memory, events, names. */
export function Recording({ children }: { readonly children: ReactNode }) {
  const { noMemory } = useWords().serviceProblems;
  return (
    <DeviceProvider
      failed={(why) => (
        <div className="page">
          <p>{noMemory}</p>
          <p className="error-text">{why}</p>
        </div>
      )}
    >
      <FactsProvider>
        <NamesProvider>{children}</NamesProvider>
      </FactsProvider>
    </DeviceProvider>
  );
}

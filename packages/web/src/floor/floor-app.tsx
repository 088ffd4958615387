import { MantineProvider } from "@mantine/core";
import { Redirect, Route, Switch } from "wouter";
import { SessionProvider, useSession } from "../app/session/session.tsx";
import { theme } from "../app/theme.ts";
import { useWords, WordsProvider } from "../app/words.tsx";
import { DeviceProvider } from "./device.tsx";
import { OutboxPage } from "./outbox/outbox-page.tsx";
import { PickPage } from "./pick/pick-page.tsx";
import { PlacePage } from "./pick/place-page.tsx";
import { FloorPrintPage } from "./print/print-page.tsx";
import { AtPlace } from "./shell/at-place.tsx";
import { FloorSignIn } from "./shell/sign-in.tsx";
import { ArrivePage } from "./sites/arrive-page.tsx";
import { SendPage } from "./sites/send-page.tsx";
import { WorkPage } from "./tasks/work-page.tsx";

/** The floor: one thing a screen, on any tablet, with or without the network. */
export function FloorApp() {
  return (
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <WordsProvider>
        <SessionProvider failed={(tryAgain) => <NoServer tryAgain={tryAgain} />}>
          <DeviceProvider failed={(why) => <NoMemory why={why} />}>
            <Pages />
          </DeviceProvider>
        </SessionProvider>
      </WordsProvider>
    </MantineProvider>
  );
}

function Pages() {
  const { status } = useSession();
  if (status.accounts && status.person === null) return <FloorSignIn />;
  return (
    <Switch>
      <Route path="/floor/place">
        <PlacePage />
      </Route>
      <Route path="/floor/records">
        <OutboxPage />
      </Route>
      <Route path="/floor/print">
        <FloorPrintPage />
      </Route>
      <Route path="/floor/send">
        <AtPlace>
          <SendPage />
        </AtPlace>
      </Route>
      <Route path="/floor/arrive">
        <AtPlace>
          <ArrivePage />
        </AtPlace>
      </Route>
      <Route path="/floor/u/:units/*?">
        {({ units, "*": rest }) => (
          <AtPlace>
            <WorkPage key={units} unitIds={decodeURIComponent(units).split("+")} view={rest ?? ""} />
          </AtPlace>
        )}
      </Route>
      <Route path="/floor">
        <AtPlace>
          <PickPage />
        </AtPlace>
      </Route>
      <Route>
        <Redirect to="/floor" replace />
      </Route>
    </Switch>
  );
}

function NoServer({ tryAgain }: { readonly tryAgain: () => void }) {
  const { floor } = useWords();
  return (
    <main className="floor-message">
      <p>{floor.noServer}</p>
      <button type="button" className="floor-main" onClick={tryAgain}>
        {floor.tryAgain}
      </button>
    </main>
  );
}

function NoMemory({ why }: { readonly why: string }) {
  const { floor } = useWords();
  return (
    <main className="floor-message">
      <p>{floor.noMemory}</p>
      <p className="error-text">{why}</p>
    </main>
  );
}

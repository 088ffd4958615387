import { IconArrowLeft, IconCloudCheck, IconCloudOff, IconCloudUp } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { Link } from "wouter";
import { useSpeech, useWords } from "../../app/words.tsx";
import { useDevice, useOwnFacts } from "../device.tsx";

/** Time of day, as clocks on the wall show it. */
export const clockTime = (ms: number, language: "en" | "zh"): string =>
  new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
    hour: "2-digit",
    minute: "2-digit",
  }).format(ms);

/** The bar above every screen: the way back, where one is, and whether all is sent. */
export function FloorHead({
  back,
  backLabel,
  children,
}: {
  readonly back: string | null;
  readonly backLabel?: string;
  readonly children: ReactNode;
}) {
  const { floor } = useWords();
  return (
    <header className="floor-head">
      {back !== null && (
        <Link className="floor-square" href={back} aria-label={backLabel ?? floor.back}>
          <IconArrowLeft size={30} />
        </Link>
      )}
      <div className="floor-where">{children}</div>
      <NetSign />
    </header>
  );
}

/** Whether what was recorded is at the server, and how much is not; leads to what this device recorded. */
function NetSign() {
  const { words, language } = useSpeech();
  const { net } = words.floor;
  const { sending, awaySince } = useDevice();
  const own = useOwnFacts();
  const waiting = own.filter(({ sentAt }) => sentAt === null).length;
  const aside = own.filter(({ why }) => why !== null).length;
  const Sign =
    awaySince === null && waiting === 0 && sending.state === "sent"
      ? IconCloudCheck
      : sending.state === "sending"
        ? IconCloudUp
        : IconCloudOff;
  const isTrouble = aside > 0 || sending.state === "refused";
  return (
    <Link
      href="/floor/records"
      className="floor-net"
      data-trouble={isTrouble ? "" : undefined}
      data-away={awaySince === null ? undefined : ""}
    >
      <Sign size={26} aria-hidden />
      <span aria-live="polite">
        {awaySince === null
          ? net[sending.state]
          : words.floorBench.net.offline(clockTime(awaySince, language))}
        {waiting > 0 && <small>{net.waiting(waiting)}</small>}
      </span>
    </Link>
  );
}

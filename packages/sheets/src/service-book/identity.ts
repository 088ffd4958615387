import type { LineResult } from "@pinwright/engine";
import { label, say } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import { revisionOf } from "../options.ts";
import type { ServiceBookOptions } from "./options.ts";

/** Letters of the service book in an identification number. */
const LETTERS = "SB";

/** Name of a service book, and of its files. @param serial of the machine that it goes with; blank: any */
export const serviceBookName = (serial: string, language: ServiceBookOptions["language"]): string =>
  `machine.service-book${serial === "" ? "" : `-${serial}`}.${language}`;

/** Title block of a service book. */
export function serviceBookIdentity(
  line: Pick<LineResult, "machine">,
  options: ServiceBookOptions,
): Identity {
  const { machine } = line.machine.book;
  const serial = options.unit?.serial ?? "";
  const documentType = say(options.language, (w) => w.serviceBook.title);
  const title = label(options.language, { en: machine.label, zh: machine.label_zh }, machine.id);
  const sheetId = serviceBookName(serial, options.language);
  return {
    machineId: machine.id,
    sheetId,
    fileName: sheetId,
    documentTitle: `${title}: ${documentType}`,
    owner: machine.owner,
    documentType,
    title,
    supplement:
      serial === ""
        ? say(options.language, (w) => w.serviceBook.everyMachine)
        : say(options.language, (w) => w.serviceBook.serial(serial)),
    number: `${machine.id}-${LETTERS}${serial === "" ? "" : `-${serial}`}`,
    revision: revisionOf(machine, options),
    date: options.date,
    creator: options.creator,
    approved: machine.approved,
    state: options.state,
    address: options.address,
    scale: "",
  };
}

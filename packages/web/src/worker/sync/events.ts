import { eventSchema, pathTo, type ServerEvent } from "@pinwright/contract";

/**
 * Listens to the server for as long as the worker lives. After every loss of the connection `again` is called
 * once it is back: something may have been missed.
 */
export function listen(heard: (event: ServerEvent) => void, again: () => void, lost: () => void): void {
  const source = new EventSource(pathTo("events", {}));
  let broken = false;
  source.onmessage = (message: MessageEvent<string>) => {
    const event = eventSchema.safeParse(JSON.parse(message.data));
    if (event.success) heard(event.data);
  };
  source.onopen = () => {
    if (broken) again();
    broken = false;
  };
  source.onerror = () => {
    if (!broken) lost();
    broken = true;
    if (source.readyState === EventSource.CLOSED) setTimeout(() => listen(heard, again, lost), 3_000);
  };
}

/** Waits until a server answers and has made its first books; at most two minutes. */
export async function waitForServer(origin: string): Promise<void> {
  for (let tries = 0; tries < 480; tries++) {
    const ready = await fetch(`${origin}/api/books`).then(
      async (response) => response.ok && JSON.stringify(await response.json()).includes("tidewatch"),
      () => false,
    );
    if (ready) return;
    await new Promise((done) => setTimeout(done, 250));
  }
  throw new Error("the server did not start");
}

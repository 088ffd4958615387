import { startEarlyWorker } from "./book/early-worker.ts";

startEarlyWorker(location.pathname);
void import("./start-app.tsx");

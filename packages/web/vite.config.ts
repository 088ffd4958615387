import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { floorFiles } from "./floor-files.ts";
import { servicePageFile } from "./service-page-file.ts";

/** The address of a running server, for working on the app with `npm run web`. */
const server = process.env.PINWRIGHT_SERVER ?? "http://127.0.0.1:4180";

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), floorFiles(), servicePageFile()],
  build: {
    target: "es2023",
    // Without it the CSS step rewrites `light-dark()` into a form in which borders vanish.
    cssTarget: ["chrome123", "firefox120", "safari17.5"],
    // The server's content policy takes fonts only as files of their own.
    assetsInlineLimit: 0,
    // The office, and the floor with a page of its own that works without the network.
    rolldownOptions: { input: ["index.html", "floor.html"].map((page) => `${import.meta.dirname}/${page}`) },
    outDir: "dist",
    emptyOutDir: true,
  },
  worker: { format: "es" },
  server: {
    // The server answers only to its own address, and only to pages from there.
    proxy: { "/api": { target: server, changeOrigin: true, headers: { origin: server } } },
  },
});

/* What the site writes above the worker's code (triage/offline/precache.py). */
declare const SET: {
  version: string;
  parts: { pack: string; pages: string };
  files: { url: string; hash: string }[];
  headers: Record<string, string>;
};

interface ServiceWorkerGlobalScopeEventMap {
  sync: ExtendableEvent;
}

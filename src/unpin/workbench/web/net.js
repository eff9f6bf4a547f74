/** The only module that fetches. Every reply is a record; a fault is one too, with `ok: false` and a sentence. */

/**
 * @typedef {{ok: boolean, status: number, message?: string, code?: string, [key: string]: any}} Reply
 */

/** How many questions wait for a reply. */
export const asking = { count: 0 };

/** @template T @param {() => Promise<T>} what @returns {Promise<T>} */
async function counted(what) {
  asking.count++;
  try {
    return await what();
  } finally {
    asking.count--;
  }
}

/** @param {Response} response @returns {Promise<Reply>} */
async function record(response) {
  try {
    return { ok: response.ok, ...(await response.json()), status: response.status };
  } catch {
    return { ok: false, status: response.status, code: "reply" };
  }
}

/** @param {string} path @param {Record<string, string | number>} [query] @returns {Promise<Reply>} */
export async function ask(path, query) {
  try {
    const asked = query ? `?${new URLSearchParams(Object.entries(query).map(([k, v]) => [k, String(v)]))}` : "";
    return await counted(async () => record(await fetch(path + asked)));
  } catch {
    return { ok: false, status: 0, code: "away" };
  }
}

/** @param {string} path @param {object} body @param {{keepalive?: boolean, signal?: AbortSignal}} [how] @returns {Promise<Reply>} */
export async function send(path, body, how = {}) {
  try {
    return await counted(async () => record(await fetch(path, posting(body, how))));
  } catch (reason) {
    return { ok: false, status: 0, code: reason instanceof DOMException && reason.name === "AbortError" ? "dropped" : "away" };
  }
}

/** So long is an older question of a kind waited for when there is a newer one, ms; then it is dropped, and the engine stops. */
export const PATIENCE = 1500;

/** @type {Map<string, AbortController>} */
const lately = new Map();

/** The same for questions of which only the last one of its kind matters. @param {string} path @param {object} body @returns {Promise<Reply>} */
export async function latest(path, body) {
  const [old, mine] = [lately.get(path), new AbortController()];
  if (old) setTimeout(() => old.abort(), PATIENCE);
  lately.set(path, mine);
  const reply = await send(path, body, { signal: mine.signal });
  if (lately.get(path) === mine) lately.delete(path);
  return reply;
}

/** The same where good news are bytes. @param {string} path @param {object} body @returns {Promise<Reply & {bytes?: Blob, headers?: Headers}>} */
export async function bytes(path, body) {
  try {
    const response = await counted(() => fetch(path, posting(body, {})));
    const type = response.headers.get("content-type") ?? "";
    if (type.startsWith("application/json")) return await record(response);
    return { ok: response.ok, status: response.status, bytes: await response.blob(), headers: response.headers };
  } catch {
    return { ok: false, status: 0, code: "away" };
  }
}

/** @param {object} body @param {object} how @returns {RequestInit} */
const posting = (body, how) => ({
  method: "POST",
  headers: { "Content-Type": "application/json" },
  body: JSON.stringify(body),
  ...how,
});

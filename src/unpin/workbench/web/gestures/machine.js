/** A hand on the sheet as a small tree of states. Each answers what it knows, all answer `escape`; a wrong name throws. */

/**
 * @typedef {{spot: [number, number], shift: boolean, button: number, touch: boolean, id: number, space: boolean}} Touch spot in pixels of the sheet
 * @typedef {"press" | "move" | "lift" | "escape" | "second"} Event
 * @typedef {{enter?: (memory: any, touch: Touch) => any, leave?: (memory: any) => void} & {[event in Event]?: (memory: any, touch: Touch) => [string, any] | void}} HandState
 */

/**
 * @param {Record<string, HandState>} states @param {string} start
 * @returns {{state: () => string, path: string[], send: (event: Event, touch: Touch) => void}} `path` names the states gone through
 */
export function machine(states, start) {
  let now = start;
  /** @type {any} */
  let memory = {};
  const path = [start];
  for (const [name, state] of Object.entries(states))
    if (name !== start && !state.escape) throw new Error(`${name} has no way out`);
  return {
    state: () => now,
    path,
    send(event, touch) {
      const next = states[now][event]?.(memory, touch);
      if (!next) return;
      if (!states[next[0]]) throw new Error(`there is no state ${next[0]}`);
      states[now].leave?.(memory);
      [now, memory] = next;
      path.push(now);
      const more = states[now].enter?.(memory, touch);
      if (more) memory = { ...memory, ...more };
    },
  };
}

const AT_A_STRETCH_MS = 20;
const others = () => new Promise<void>((go) => setImmediate(go));

/** Lets the other work of this process go on whenever a stretch of it has passed. */
export class Gently {
  #since = performance.now();
  async pause(): Promise<void> {
    if (performance.now() - this.#since < AT_A_STRETCH_MS) return;
    await others();
    this.#since = performance.now();
  }
  /** Runs steps to their end, pausing between them. */
  async run<T>(steps: Generator<undefined, T>): Promise<T> {
    for (;;) {
      const { done, value } = steps.next();
      if (done) return value;
      await this.pause();
    }
  }
}

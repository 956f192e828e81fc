/** A line that counts, on a terminal; elsewhere nothing. */

const EVERY_MS = 100;

export interface Counter {
  show(done: number, of: number): void;
  /** Takes the line away. */
  end(): void;
}

export function counter(what: string, stream: NodeJS.WriteStream = process.stderr): Counter {
  let shown = 0;
  const clear = '\r\x1b[K';
  return {
    show: (done, of) => {
      const now = performance.now();
      if (!stream.isTTY || now - shown < EVERY_MS) return;
      shown = now;
      stream.write(`${clear}${done} of ${of} ${what}`);
    },
    end: () => {
      if (stream.isTTY) stream.write(clear);
    },
  };
}

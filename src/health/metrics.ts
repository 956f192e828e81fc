/** What is counted, as Prometheus reads it. No label holds an id: there are as many series as there are commands. */
import { AggregatorRegistry, Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Meter } from './meter.ts';

/** The platform waits three seconds for the first word. */
const ACKNOWLEDGED_SECONDS = [0.05, 0.1, 0.25, 0.5, 1, 1.5, 2, 2.5, 3];
const ANSWERED_SECONDS = [0.05, 0.1, 0.25, 0.5, 1, 2, 4, 8, 16];
const PICTURE_SECONDS = [0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.4];

export interface Metrics extends Meter {
  register: Registry;
  /** Another figure, looked at whenever somebody asks. */
  gauge(name: string, help: string, look: () => number | Promise<number>): void;
}

/** What is counted, and under which names it stands. */
function openFigures(register: Registry) {
  const registers = [register];
  return {
    answers: new Counter({
      name: 'trimtally_answers_total',
      help: 'What members did, by command and by what came of it.',
      labelNames: ['command', 'outcome'],
      registers,
    }),
    acknowledged: new Histogram({
      name: 'trimtally_acknowledged_seconds',
      help: 'Until the platform knew that there is an answer; it gives up after three.',
      labelNames: ['command'],
      buckets: ACKNOWLEDGED_SECONDS,
      registers,
    }),
    answered: new Histogram({
      name: 'trimtally_answered_seconds',
      help: 'Until all of an answer was said.',
      labelNames: ['command'],
      buckets: ANSWERED_SECONDS,
      registers,
    }),
    pictures: new Counter({
      name: 'trimtally_pictures_total',
      help: 'Pictures by whether they could be drawn.',
      labelNames: ['outcome'],
      registers,
    }),
    drawing: new Histogram({
      name: 'trimtally_picture_seconds',
      help: 'Until a picture was drawn, its place in the line included.',
      buckets: PICTURE_SECONDS,
      registers,
    }),
  };
}

/**
 * @param commands the names that may stand as a label; anything else is counted as `other`
 * @param shard of a bot in several processes, the one that counts: a label of all that it counts
 */
export function openMetrics(commands: readonly string[], shard?: number | 'launcher'): Metrics {
  const register = new Registry();
  if (shard !== undefined) register.setDefaultLabels({ shard: String(shard) });
  collectDefaultMetrics({ register });
  const known = new Set(commands);
  const { answers, acknowledged, answered, pictures, drawing } = openFigures(register);
  return {
    register,
    gauge: (name, help, look) =>
      void new Gauge({
        name,
        help,
        registers: [register],
        async collect() {
          this.set(await look());
        },
      }),
    told: ({ command: name, outcome, acknowledgedMs, ms }) => {
      const command = known.has(name) ? name : 'other';
      answers.inc({ command, outcome });
      if (acknowledgedMs !== null) acknowledged.observe({ command }, acknowledgedMs / 1000);
      answered.observe({ command }, ms / 1000);
    },
    drew: (outcome, ms) => {
      pictures.inc({ outcome });
      drawing.observe(ms / 1000);
    },
  };
}

/** What several processes told in JSON, on one page: their labels keep them apart. */
export const together = (told: readonly object[]): Pick<Registry, 'metrics' | 'contentType'> =>
  AggregatorRegistry.aggregate([...told]);

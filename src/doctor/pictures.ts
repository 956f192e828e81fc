/** Whether pictures can be drawn, here and, where one is named, at the chart host. */
import type { Picture } from '../../shared/pictures/picture.ts';
import type { Environment } from '../environment.ts';
import { type Finding, find, ok, wrong } from './finding.ts';

const TRIAL: Picture = {
  name: 'trial',
  config: { type: 'bar', data: { labels: ['trial'], datasets: [{ data: [1] }] } },
  width: 200,
  height: 100,
  alt: 'A bar.',
};

export async function examinePictures({ PICTURES, QUICKCHART_URL: url }: Environment): Promise<Finding[]> {
  const here = find('pictures', async () => {
    // Fonts and canvas are loaded with the module: what is missing of them is told by this line.
    const { draw } = await import('../pictures/local.ts');
    const { length } = await draw(TRIAL);
    return ok(`drawn here, with the fonts that ship (${length} bytes)`);
  });
  if (PICTURES !== 'quickchart' || url === undefined) return [await here];
  const there = find('host', async () => {
    const { drawAt } = await import('../pictures/quickchart.ts');
    let why = '';
    const log = {
      info: () => {},
      error: () => {},
      warn: (about: object) => {
        why = 'why' in about ? String(about.why) : '';
      },
    };
    const otherwise = () => Promise.reject(new Error(why));
    await drawAt({ url, otherwise, log })(TRIAL);
    return ok(`${url} draws`);
  }).then((finding) =>
    finding.state === 'wrong'
      ? {
          ...finding,
          ...wrong(`${url} does not draw (${finding.says}): pictures are drawn here until it does`),
        }
      : finding,
  );
  return Promise.all([here, there]);
}

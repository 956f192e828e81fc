/** The words of the picture of where the money for one piece went. */
import type { Money } from '../../measure/money.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { capital } from './capitals.ts';
import { unitWord } from './measures.ts';

export const moneyWent = (show: Show) => {
  const unit = unitWord(show);
  return {
    title: () => 'Where the money went',
    paid: () => 'paid',
    usable: ({ bears }: { bears: boolean }) => (bears ? 'usable, at the shelf price' : 'usable'),
    loss: () => 'paid for what came off',
    /** Stands in place of a part's name where that may not be told. */
    unnamed: ({ nth }: { nth: number }) => `part ${show.count(nth)}`,
    beside: ({ money, share }: { money: Money; share: number }) =>
      `${show.money(money)}, ${show.share(share)}`,
    perUnit: () => `a ${unit} usable`,
    bears: ({ net }: { net: Money }) => `Usable meat and what came off together: ${show.money(net)}`,
    altHead: ({ about }: { about: string }) => `Where the money went. ${about}. Shares are of what was paid.`,
    altRow: ({ name, money, share }: { name: string; money: Money; share: number | null }) =>
      `${capital(name)}: ${show.money(money)}${share === null ? '' : `, ${show.share(share)}`}.`,
    altUsable: ({
      cost,
      usable,
      bought,
      share,
    }: {
      cost: Money;
      usable: Nanograms;
      bought: Nanograms;
      share: number;
    }) =>
      `Usable: ${show.weight(usable)} of ${show.weight(bought)}, ${show.share(share)} of the weight, at ${show.money(cost)} a ${unit}.`,
  };
};

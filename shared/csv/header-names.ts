/**
 * What people call the columns: the words that members read, and those that home-made tables have. A name stands for
 * one column only. Another language is another key in each row. From memory: words of the trade, no source.
 */
import type { Field } from './fields.ts';

type Names = Readonly<Record<'en' | 'de' | 'es', string>>;

/** Names of each column, parted by `, `; case, accents and punctuation do not matter. */
export const HEADER_NAMES: Readonly<Record<Field, Names>> = {
  piece: { en: 'piece, piece id, id', de: 'Stück-ID, Kennung', es: 'pieza, id de pieza, identificador' },
  member: {
    en: 'member, member id, who, person, user, user id',
    de: 'Mitglied, wer, Mitglieds-ID',
    es: 'miembro, quién, persona, id de miembro',
  },
  cut: {
    en: 'cut, meat, what',
    de: 'Teilstück, Zuschnitt, Fleisch, Fleischstück',
    es: 'corte, carne, corte de carne',
  },
  grade: {
    en: 'grade, quality',
    de: 'Güteklasse, Handelsklasse, Klasse, Qualität',
    es: 'grado, calidad, categoría',
  },
  style: {
    en: 'style, fat left on, the fat left on',
    de: 'Stil, Fettauflage, belassenes Fett, Fett belassen',
    es: 'estilo, grasa dejada, grasa que queda',
  },
  bone: { en: 'bone', de: 'Knochen', es: 'hueso' },
  pieces: {
    en: 'pieces, number of pieces, count, quantity, qty',
    de: 'Stück, Stückzahl, Anzahl',
    es: 'piezas, número de piezas, cantidad',
  },
  bought: {
    en: 'bought, bought weight, weight bought, label, label weight, weight',
    de: 'gekauft, Einkaufsgewicht, gekauftes Gewicht, Etikett, Gewicht',
    es: 'comprado, peso comprado, etiqueta, peso',
  },
  bagged: {
    en: 'bagged, out of the bag, out of bag',
    de: 'aus dem Beutel, ohne Beutel',
    es: 'fuera de la bolsa, sin bolsa',
  },
  trim: {
    en: 'trim, came off, trimmed off, trimmings, trim weight',
    de: 'abgeschnitten, weggeschnitten, Abschnitte, Parüren',
    es: 'recortado, recorte, recortes, quitado',
  },
  left: {
    en: 'left, left to cook',
    de: 'übrig, zum Garen übrig, bleibt zum Garen',
    es: 'queda, queda para cocinar, para cocinar',
  },
  added: {
    en: 'added, put in, injection, brine',
    de: 'hineingegeben, zugegeben, Lake',
    es: 'añadido, inyección, salmuera',
  },
  cooked: {
    en: 'cooked, off the heat, off heat, cooked weight',
    de: 'vom Feuer, gegart, Gargewicht',
    es: 'fuera del fuego, cocinado, cocido, peso cocido',
  },
  scraps: {
    en: 'scraps, thrown away',
    de: 'weggeworfen, Abfall, Reste',
    es: 'tirado, desechado, desechos',
  },
  served: {
    en: 'served, on the plate, served weight',
    de: 'auf dem Teller, serviert',
    es: 'en el plato, servido, peso servido',
  },
  saved: {
    en: 'saved, saved trimmings, trimmings saved',
    de: 'aufgehoben, verwertet',
    es: 'guardado, aprovechado',
  },
  price: { en: 'price', de: 'Preis', es: 'precio' },
  currency: { en: 'currency', de: 'Währung', es: 'moneda, divisa' },
  wrap: { en: 'wrap, wrapped in, wrapped', de: 'eingewickelt, eingewickelt in', es: 'envuelto, envuelto en' },
  shop: {
    en: 'shop, store, bought at',
    de: 'Laden, Geschäft, Metzger, Händler, gekauft bei',
    es: 'tienda, carnicería, comprado en',
  },
  date: {
    en: 'date, day, bought on',
    de: 'Datum, Tag, Kaufdatum, gekauft am',
    es: 'fecha, día, fecha de compra',
  },
  note: {
    en: 'note, notes, comment, comments',
    de: 'Notiz, Notizen, Bemerkung, Bemerkungen, Anmerkung',
    es: 'nota, notas, comentario, comentarios, observaciones',
  },
  status: { en: 'status', de: 'Status, Stand', es: 'estado' },
  pumped: { en: 'pumped', de: 'vorgespritzt, gespritzt', es: 'inyectado de fábrica, inyectado' },
};

/** Names of a column of prices that are for the whole piece. */
export const TOTAL_NAMES: Names = {
  en: 'paid, total price, price total, price in all, total paid',
  de: 'bezahlt, Gesamtpreis, Preis gesamt, Preis insgesamt',
  es: 'pagado, precio total, total pagado',
};

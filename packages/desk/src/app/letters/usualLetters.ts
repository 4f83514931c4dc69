/** The letters as they come with the desk, English and Spanish; each can be edited in Settings. */
import type { LetterStep } from '@gaugewright/contract'

interface Letter {
  subject: string
  text: string
}

const english: Record<LetterStep, Letter> = {
  'offer received': {
    subject: 'Thank you for your offer: {network}',
    text: 'Hello {name},\n\nthank you for offering to read a rain gauge for {network}. Somebody will write or call within a few days.\n\nMeanwhile, this page is yours alone. There you can put your offer right, draw your yard so that we find the best place together, or take the offer back:\n\n{link}\n\nWith kind regards\n{network}',
  },
  questions: {
    subject: 'Your yard and a rain gauge: {network}',
    text: 'Hello {name},\n\nthank you for your offer. To find a good place for the gauge we would like to know what stands around it: house, trees, fences, and whether a sprinkler runs there. A sketch with distances and heights, paced out, is enough. You can draw it here:\n\n{link}\n\nMeasure from the ground, please: no ladder and no roof is needed.\n\nWith kind regards\n{coordinator}',
  },
  'site agreed': {
    subject: 'We have found a place for your gauge: {network}',
    text: 'Hello {name},\n\nthank you for the sketch: the place we spoke of is a good one. The gauge comes next, with a post and screws.\n\nWhere you dig for the post, make sure first that no pipe or cable lies there; your local line service can tell.\n\nWith kind regards\n{coordinator}',
  },
  'gauge sent': {
    subject: 'Your gauge is on its way: {network}',
    text: 'Hello {name},\n\nyour gauge {code} ({gauge}) is on its way to you. Set it up level, its rim a little above the top of the post, and so low that you can read it from the ground.\n\nYour readings go here; you sign in with a link that comes by mail:\n\n{link}\n\nSend the first reading on the first morning, a zero too. Never go out in lightning, hail or high water: wait until 30 minutes after the last thunder.\n\nWith kind regards\n{coordinator}',
  },
  drills: {
    subject: 'Ten minutes of practice: {network}',
    text: 'Hello {name},\n\nreading a gauge has a few tricks: the bottom of the curve, zeros, traces, a full tube. These short drills show them, and tell at once what was right:\n\n{link}\n\nWith kind regards\n{coordinator}',
  },
  'first reading': {
    subject: 'Your first reading is here: {network}',
    text: 'Hello {name},\n\nyour first reading has arrived. Thank you, and welcome to {network}. From now on every morning counts, dry ones as much as wet ones.\n\nWith kind regards\n{coordinator}',
  },
  missed: {
    subject: 'We have not heard from your gauge: {network}',
    text: 'Hello {name},\n\nyour gauge {gauge} has been quiet for a while, and we hope that all is well. Is something the matter with it, or has the hour become a bad one? A word is enough; and if you would rather stop, that is all right too. Your readings up to now keep their worth.\n\nWith kind regards\n{coordinator}',
  },
  refresher: {
    subject: 'A short refresher: {network}',
    text: 'Hello {name},\n\nonce a year we ask everybody for ten minutes of practice with a drawn gauge:\n\n{link}\n\nWith kind regards\n{coordinator}',
  },
  survey: {
    subject: 'Has anything grown around your gauge? {network}',
    text: 'Hello {name},\n\ntrees grow and fences rise, so every two to three years we look at each site again. Would you look around your gauge {gauge}, and tell us what has changed? You can draw it here:\n\n{link}\n\nMeasure from the ground, please, without ladder or roof.\n\nWith kind regards\n{coordinator}',
  },
  thanks: {
    subject: 'Thank you: {network}',
    text: 'Hello {name},\n\n{occasion}\n\nThank you.\n\nWith kind regards\n{coordinator}',
  },
  leaf: {
    subject: 'Your rain, {occasion}: {network}',
    text: 'Hello {name},\n\nyour own page for {occasion} comes with this letter: your rain by day, and how your gauge helped. It opens in any browser and prints on one sheet.\n\nThank you.\n\nWith kind regards\n{coordinator}',
  },
}

const spanish: Record<LetterStep, Letter> = {
  'offer received': {
    subject: 'Gracias por su ofrecimiento: {network}',
    text: 'Hola, {name}:\n\nGracias por ofrecerse a leer un pluviómetro para {network}. En unos días alguien le escribirá o le llamará.\n\nMientras tanto, esta página es solo suya. En ella puede corregir su ofrecimiento, dibujar su patio para que encontremos juntos el mejor lugar, o retirarlo:\n\n{link}\n\nUn saludo cordial\n{network}',
  },
  questions: {
    subject: 'Su patio y un pluviómetro: {network}',
    text: 'Hola, {name}:\n\nGracias por su ofrecimiento. Para encontrar un buen lugar quisiéramos saber qué hay alrededor: casa, árboles, vallas, y si funciona un aspersor. Basta un croquis con distancias y alturas medidas a pasos. Puede dibujarlo aquí:\n\n{link}\n\nMida desde el suelo, por favor: no hace falta escalera ni tejado.\n\nUn saludo cordial\n{coordinator}',
  },
  'site agreed': {
    subject: 'Hay lugar para su pluviómetro: {network}',
    text: 'Hola, {name}:\n\nGracias por el croquis: el lugar del que hablamos es bueno. Lo siguiente es el pluviómetro, con su poste y sus tornillos.\n\nAntes de cavar para el poste, asegúrese de que allí no pasa ninguna tubería ni cable; el servicio local se lo puede decir.\n\nUn saludo cordial\n{coordinator}',
  },
  'gauge sent': {
    subject: 'Su pluviómetro está en camino: {network}',
    text: 'Hola, {name}:\n\nSu pluviómetro {code} ({gauge}) está en camino. Colóquelo nivelado, con la boca un poco por encima del poste y tan bajo que pueda leerlo desde el suelo.\n\nSus lecturas van aquí; se entra con un enlace que llega por correo:\n\n{link}\n\nEnvíe la primera lectura la primera mañana, aunque sea un cero. No salga nunca con rayos, granizo o crecida: espere 30 minutos después del último trueno.\n\nUn saludo cordial\n{coordinator}',
  },
  drills: {
    subject: 'Diez minutos de práctica: {network}',
    text: 'Hola, {name}:\n\nLeer un pluviómetro tiene sus trucos: el fondo de la curva, los ceros, las trazas, el tubo lleno. Estos ejercicios cortos los enseñan y dicen enseguida qué estaba bien:\n\n{link}\n\nUn saludo cordial\n{coordinator}',
  },
  'first reading': {
    subject: 'Ha llegado su primera lectura: {network}',
    text: 'Hola, {name}:\n\nHa llegado su primera lectura. Gracias, y le damos la bienvenida a {network}. Desde ahora cuenta cada mañana, las secas tanto como las lluviosas.\n\nUn saludo cordial\n{coordinator}',
  },
  missed: {
    subject: 'No sabemos nada de su pluviómetro: {network}',
    text: 'Hola, {name}:\n\nSu pluviómetro {gauge} lleva un tiempo callado y esperamos que todo vaya bien. ¿Le pasa algo, o la hora se ha vuelto incómoda? Basta una palabra; y si prefiere dejarlo, también está bien. Sus lecturas hasta ahora conservan su valor.\n\nUn saludo cordial\n{coordinator}',
  },
  refresher: {
    subject: 'Un breve repaso: {network}',
    text: 'Hola, {name}:\n\nUna vez al año pedimos a todos diez minutos de práctica con un pluviómetro dibujado:\n\n{link}\n\nUn saludo cordial\n{coordinator}',
  },
  survey: {
    subject: '¿Ha crecido algo junto a su pluviómetro? {network}',
    text: 'Hola, {name}:\n\nLos árboles crecen y las vallas suben; por eso miramos cada lugar de nuevo cada dos o tres años. ¿Quiere mirar alrededor de su pluviómetro {gauge} y contarnos qué ha cambiado? Puede dibujarlo aquí:\n\n{link}\n\nMida desde el suelo, por favor, sin escalera ni tejado.\n\nUn saludo cordial\n{coordinator}',
  },
  thanks: {
    subject: 'Gracias: {network}',
    text: 'Hola, {name}:\n\n{occasion}\n\nGracias.\n\nUn saludo cordial\n{coordinator}',
  },
  leaf: {
    subject: 'Su lluvia, {occasion}: {network}',
    text: 'Hola, {name}:\n\nCon esta carta va su propia hoja de {occasion}: su lluvia día a día, y cómo ayudó su pluviómetro. Se abre en cualquier navegador y se imprime en una página.\n\nGracias.\n\nUn saludo cordial\n{coordinator}',
  },
}

export const usualLetters: Record<'en' | 'es', Record<LetterStep, Letter>> = { en: english, es: spanish }

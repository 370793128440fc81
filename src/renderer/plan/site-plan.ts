import { toCentimetre } from '#shared/geometry/moving.ts';
import { deskNow, type Desk } from '../desk/desk.ts';
import { boundsOf } from '../drawings/frame.ts';
import { draftingNow, draw } from './drafting.ts';
import { dropSitePlan, keepSitePlan, readSitePlan, type SitePlan } from './site-plan-store.ts';

/** Whose picture lies beneath: the booking's, or the venue's where no booking is open. */
export const sitePlanKey = ({ booking, venue }: Desk): string | null => booking?.id ?? venue?.id ?? null;

/** Lays the kept picture of what is open, or none. */
export const laySitePlan = async (key: string): Promise<void> => {
  if (draftingNow().sitePlan?.key === key) return;
  draw({ sitePlan: null });
  const sitePlan = await readSitePlan(key);
  if (sitePlanKey(deskNow()) === key) draw({ sitePlan });
};

const takes = ['image/png', 'image/jpeg', 'image/webp'];

/** Lays a picture beneath the plan, as wide as the turf until it is scaled. */
export const takeInSitePlan = async (file: File): Promise<void> => {
  const desk = deskNow();
  const key = sitePlanKey(desk);
  if (!key || !desk.venue) return;
  if (!takes.includes(file.type))
    return draw({
      said: `${file.name} is no PNG, JPEG or WebP picture. Write the sheet of a PDF or a drawing out as a PNG first.`,
    });
  let size: ImageBitmap;
  try {
    size = await createImageBitmap(file);
  } catch {
    return draw({ said: `${file.name} cannot be read as a picture; open it elsewhere and write it out again as PNG.` });
  }
  const turf = boundsOf([desk.venue.field.outline]);
  const sitePlan: SitePlan = {
    key,
    name: file.name,
    picture: new Blob([await file.arrayBuffer()], { type: file.type }),
    width: size.width,
    height: size.height,
    x: toCentimetre(turf.x + turf.width / 2),
    y: toCentimetre(turf.y + turf.height / 2),
    scale: turf.width / size.width,
    turned: 0,
    opacity: 0.5,
  };
  size.close();
  await put(sitePlan, `${file.name} lies beneath. Scale it by two points a known distance apart.`);
};

const put = async (sitePlan: SitePlan, said: string): Promise<void> => {
  draw({ sitePlan, said });
  if (!(await keepSitePlan(sitePlan))) draw({ said: `${said} It could not be kept and goes when the window closes.` });
};

/** Keeps the picture where it has been dragged to. */
export const keptWhere = (): Promise<void> => changeSitePlan({});

export const changeSitePlan = async (changed: Partial<SitePlan>): Promise<void> => {
  const { sitePlan } = draftingNow();
  if (sitePlan) await put({ ...sitePlan, ...changed }, draftingNow().said);
};

/** Scales the picture so that two points of it are a known distance apart; the first stays where it is. @param metres between them */
export const scaleSitePlan = async (metres: number): Promise<void> => {
  const { sitePlan, corners } = draftingNow();
  const [one, other] = corners;
  const now = one && other ? Math.hypot(one[0] - other[0], one[1] - other[1]) : 0;
  if (!sitePlan || !one || now === 0 || !(metres > 0)) return;
  const factor = metres / now;
  const scaled = {
    scale: sitePlan.scale * factor,
    x: toCentimetre(one[0] + (sitePlan.x - one[0]) * factor),
    y: toCentimetre(one[1] + (sitePlan.y - one[1]) * factor),
  };
  draw({ corners: [], cross: null, tool: 'picture' });
  await put({ ...sitePlan, ...scaled }, 'The picture is to scale. Move it until its field lies on the field.');
};

export const takeAwaySitePlan = async (): Promise<void> => {
  const { sitePlan } = draftingNow();
  if (!sitePlan) return;
  draw({ sitePlan: null, tool: 'look', said: `${sitePlan.name} is taken away.` });
  await dropSitePlan(sitePlan.key);
};

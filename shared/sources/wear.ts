import { sourcesOf } from '#shared/sources/source.ts';

/** Feet, studs and wheels on turf, and the tests of the playing surface. Titles are abridged where the reference we read did not print them. */
export const wearSources = sourcesOf({
  'henderson-2005-traffic': {
    authors: 'Henderson, Lanovaz, Rogers, Sorochan & Vanini',
    year: 2005,
    title: 'A new apparatus to simulate athletic field traffic: the Cady Traffic Simulator',
    where: 'Agronomy Journal 97:1153',
  },
  'vanini-2007': {
    authors: 'Vanini, Henderson, Sorochan & Rogers',
    year: 2007,
    title: 'Evaluating traffic stress by the Brinkman Traffic Simulator and Cady Traffic Simulator on a Kentucky bluegrass stand',
    where: 'Crop Science 47:782–784 (abstract)',
  },
  'thoms-2016': {
    authors: 'Thoms, Brosnan & Sorochan',
    year: 2016,
    title: 'Effects of traffic on hybrid bermudagrass by root zone',
    where: 'Procedia Engineering 147:824–829 (abstract)',
  },
  'dickson-2018': {
    authors: 'Dickson et al.',
    year: 2018,
    title: 'Effects of soil water content on traffic tolerance and surface properties of hybrid bermudagrass',
    where: 'Crop Science 58(3):1416–1425, doi 10.2135/cropsci2017.10.0645 (abstract)',
  },
  'hill-pickering-2009': {
    authors: 'Hill & Pickering',
    year: 2009,
    title: 'Resistance of vegetation to walking: fern understorey, tussock grass and lawn-grass sward',
    where: 'Griffith University repository 10072/29581 (abstract)',
  },
  'cole-1995': {
    authors: 'Cole',
    year: 1995,
    title: 'Experimental trampling of vegetation. I. Relationship between trampling intensity and vegetation response',
    where: 'Journal of Applied Ecology 32:203–214',
  },
  'cole-1995b': {
    authors: 'Cole',
    year: 1995,
    title: 'Recreational trampling experiments: effects of trampler weight and shoe type',
    where: 'USDA Forest Service Research Note INT-RN-425',
  },
  'cole-bayfield-1993': {
    authors: 'Cole & Bayfield',
    year: 1993,
    title: 'Recreational trampling of vegetation: standard experimental procedures',
    where: 'Biological Conservation 63',
  },
  'shearman-beard-1975': {
    authors: 'Shearman & Beard',
    year: 1975,
    title: 'Turfgrass wear tolerance mechanisms: wear tolerance of seven turfgrass species',
    where: 'Agronomy Journal 67:208–211 (abstract)',
  },
  'sport-england-2011': {
    authors: 'Sport England',
    year: 2011,
    title: 'Natural Turf for Sport, 2nd ed. (first ed. 2000)',
    where: 'adult hours of use a week by drainage',
  },
  'chivers-aldous-2003': {
    authors: 'Chivers & Aldous',
    year: 2003,
    title: 'Performance monitoring of grassed playing surfaces for Australian Rules football',
    where: 'Journal of Turfgrass and Sports Surface Science 79:73–80',
  },
  'astm-f1702': {
    authors: 'ASTM International',
    year: null,
    title: 'F1702, Impact attenuation of natural turf playing surface systems using a lightweight portable apparatus',
    where: '2.25 kg hammer dropped 455 mm',
  },
  'mcauliffe-hammer': {
    authors: 'McAuliffe',
    year: null,
    title: 'Use of the impact hammer on sports turf',
    where: 'New Zealand Sports Turf Institute',
  },
  'twomey-2014': {
    authors: 'Twomey, Ullah & Petrass',
    year: 2014,
    title: 'One, two, three or four: does the number of hammer drops alter ground hardness measures on natural grass?',
    where: 'Proceedings of the IMechE, Part P, 228(1):33–39',
  },
  'thoms-2016-hardness': {
    authors: 'Thoms et al.; Pennsylvania State University method page',
    year: 2016,
    title: 'Head-injury limit of 200 g (F355-A missile on synthetic turf, ASTM F1936)',
    where: 'method page and Procedia Engineering 147:824–829',
  },
  'gridiron-hardness-rule': {
    authors: 'Trade page on pre-game inspection',
    year: null,
    title: 'Professional gridiron pre-game rule: every spot under 100 g with the 2.25 kg hammer',
    where: 'trade press; weak',
  },
  'canaway-1990': {
    authors: 'Canaway, Bell, Holmes & Baker; Bell & Holmes 1988',
    year: 1990,
    title: 'Standards for the playing quality of natural turf for association football',
    where: 'ASTM STP 1073:29–47',
  },
});

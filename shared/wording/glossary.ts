/** Words of the trade and of ours, each in a sentence or two, by the page on which they are met first. */
export const glossary = {
  book: {
    Footprint:
      'The ground one part of the event takes, drawn on the plan. Ground that two share belongs to the one listed first.',
    Layer: 'One floor or sheet on one footprint, from the hour it goes on to the hour it comes off.',
    'Load-in, strike':
      'The hours in which everything is brought and built, and the hours in which it is taken down and driven out.',
    'Hold, enquiry': 'A date somebody has asked for and nobody has promised. It counts in the season until it is given back.',
    'Home date': 'The next game on the field. Every forecast says what the turf is on that day.',
  },
  foresee: {
    'Live cover': 'How much of the ground, seen from above, is green leaf.',
    Crown:
      'The growing point at the foot of the grass plant. Where crowns live, leaf comes back; where they are dead, only seed or sod helps.',
    Reserve: 'What a plant can live on in the dark, as days of darkness at 20 °C. A cooler crown uses it more slowly.',
    Member: 'One season drawn out of the climate with every doubtful number drawn too. Many members make a range and a chance.',
    'Middle, P10–P90': 'Half of the members lie below the middle; eight in ten lie between P10 and P90.',
    'Growth potential': 'How near the air is to what the grass likes best, from 0 (no growth) to 1.',
    'Usual season': 'One season without chance, reckoned while you change something. Nothing is kept of it.',
  },
  compare: {
    Way: 'The same event on another floor, day or place of the stage, reckoned with the same seasons as the others.',
    'Vented, sealed': 'Whether air passes beneath a floor. Beneath a sealed one heat and moisture stay.',
    'Translucent, opaque': 'Whether a floor lets part of the light through to the leaf, or none.',
  },
  recover: {
    'Way back': 'What is done with a zone: leave it, mend it with air, feed and seed, or replace it with sod.',
    'Thick cut, thin cut':
      'Sod cut deep enough to lie firm by its own weight, or cut thin, which must root before it is played on.',
    Release: 'The hour at which the farm must be told to harvest. After it the order costs money even when it is called off.',
    'In hand': 'Hours between the end of the work on a zone and the latest hour it may end.',
    'Held hours': 'A job at hours you have set. The next plan moves the others round it.',
    Member: 'One drawn season; “ready” is the share of them in which the zone is ready.',
  },
  inspect: {
    Baseline: 'The state before the event, written down with those who will pay. Without it nothing can be shown afterwards.',
    Handback: 'The walk on which the field is given back, spot by spot.',
    'Fixed point': 'A place that is found again at every inspection, so that readings can be laid beside each other.',
    'Members that count': 'How many drawn seasons agree with what was read. Few mean that the forecast and the field differ.',
  },
  settle: {
    'Likely, low, high':
      'Likely is the plan. Low and high follow the area in the lowest and in the highest tenth of the drawn seasons.',
    'Chargeable share': 'The part of a cost that the clause named beside it puts on the event.',
    'Cap, deposit': 'The most the event pays whatever the damage, and what it left beforehand.',
    'Late damage': 'What shows only weeks after the handback and may still be claimed until the day in the terms.',
  },
  report: {
    'Frozen run': 'A forecast or plan that is kept as it was made. The same run always gives the same paper, to the byte.',
    'Field-use conditions': 'What the event may do on the turf, as a part of the contract.',
    'Charge-back': 'What the event pays for afterwards, line by line with its evidence.',
  },
  venue: {
    'Root zone': 'The layer the roots live in, and what lies under it: it decides how water leaves and how firm the ground is.',
    Standing:
      'How far a number can be leaned on: published, derived from what is published, recalled, common practice, our assumption, or entered for this venue.',
    Curfew: 'Hours in which noisy work and lorries are not allowed.',
    Sward: 'The grasses of the field and the share each has of it.',
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, string>>>>;

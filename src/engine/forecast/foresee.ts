import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { newShared } from '#engine/forecast/courses.ts';
import { memberAnswers } from '#engine/forecast/member-answers.ts';
import { workshop } from '#engine/forecast/workshop.ts';
import { groundLoads } from '#engine/forecast/ground-loads.ts';
import { drawnMember, memberMaker, usualMember } from '#engine/forecast/member.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import { sceneOf } from '#engine/forecast/scene.ts';
import { eveningsOf, summarise } from '#engine/forecast/summarise.ts';
import { count, countMember, openTally, usualCourse } from '#engine/forecast/tally.ts';

/**
 * From a booking to the state of every zone on every day up to the home date.
 *
 * The usual season gives the causes, the readings and, where one member is asked for, the whole answer. More members are drawn:
 * weather and doubtful numbers each from streams of their own, so that the same question gives the same bytes and two options
 * differ only by what was changed between them.
 * @param report told how far it has come, 0–1
 * @throws RangeError with field and reason where the question contradicts itself
 */
export const foresee = (question: ForecastQuestion, report: (share: number) => void = () => {}): Forecast => {
  const scene = sceneOf(question);
  const maker = memberMaker(scene);
  const shop = workshop(scene, maker.window, groundLoads(scene), newShared());
  const evenings = eveningsOf(shop);
  const usual = usualMember(maker);
  const course = usualCourse(shop, usual);
  const tally = openTally(shop, question.members);
  if (question.members === 1) shop.courses.forEach((one) => count(tally, shop, 0, one, course.tracks[one.groups[0]!]!, evenings));
  else {
    const answers = memberAnswers(shop, shop.lastBusy);
    for (let index = 0; index < question.members; index++) {
      answers.begin();
      countMember(tally, shop, index, drawnMember(maker, index), evenings, answers);
      if (index % 10 === 9) report((index + 1) / question.members);
    }
  }
  report(1);
  return summarise(shop, course, usual, tally, evenings);
};

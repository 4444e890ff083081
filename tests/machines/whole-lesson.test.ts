import { describe, expect, it } from 'vitest';
import { loadLesson } from '../../src/cli/load-lessons.ts';
import { chainLength, pointAtLength } from '../../src/lib/geometry/chain.ts';
import { nearestOnChain } from '../../src/lib/geometry/nearest.ts';
import { lerp } from '../../src/lib/geometry/point.ts';
import { gradeLesson } from '../../src/lib/grading/grade.ts';
import { toAttempt } from '../../src/lib/recipe/save.ts';
import { startWork } from '../../src/lib/recipe/start.ts';
import type { Command, CommandName } from '../../src/lib/recipe/types.ts';
import { landmark, sampleAttempt } from '../recipe/sample.ts';
import { Hand } from './hand.ts';

/*
 * The whole lesson by gestures: each step with its own tools, by pointer or by keys, is marked like the written sample. What
 * is only typed (readings, labels) and the numbers of the allowances come from the sample.
 */
const lesson = loadLesson('slanted-seam')!;
const sample = sampleAttempt('F3', 'knit');

class Learner extends Hand {
  step = '';
  readonly tagged: Command[] = [];
  at(step: string): this {
    this.collect();
    this.step = step;
    return this;
  }
  collect(): void {
    for (const command of this.commands.splice(0)) this.tagged.push({ ...command, step: this.step });
  }
  typed(what: CommandName): this {
    this.collect();
    for (const command of sample.commands.filter((one) => one.do === what)) {
      const hand = new Hand(this.work, this.fabric);
      this.tagged.push({ ...command, step: this.step });
      this.work = hand.given(command);
    }
    return this;
  }
}

function firstSteps(hand: Learner): void {
  hand.at('read-the-block').take('identify');
  for (const id of [
    'landmark:right/bust-point',
    'edge:right/dart-upper',
    'edge:right/dart-lower',
    'edge:centre-front',
    'landmark:right/neck-point',
  ])
    hand.pick(id);
  hand.typed('read');
  hand.at('open-out').take('open-out').pick('centre-front');
}

const middle = (hand: Learner) => {
  const b1 = landmark(hand.work, 'right/bust-point');
  const b2 = landmark(hand.work, 'left/bust-point');
  return { b1, b2, mid: lerp(b1, b2, 0.5) };
};

/** Draws the line with the pointer. */
function lineByPointer(hand: Learner): void {
  hand.at('style-line').take('draw-line');
  const { b1, b2, mid } = middle(hand);
  const end = hand.target('start:left/side-lower').point;
  hand.down(hand.target('start:right/shoulder').point, 'start:right/shoulder').move(end).up();
  hand.drag('add:0', { x: b1.x + 17, y: b1.y - 7 });
  hand.drag('add:1', { x: mid.x - 8, y: mid.y + 8 });
  hand.drag('add:2', { x: b2.x - 4, y: b2.y + 17 });
}

/** Draws the line with keys alone: pick, nudge, put down. */
function lineByKeys(hand: Learner): void {
  hand.at('style-line').take('draw-line');
  hand.pick('start:right/shoulder').pick('start:left/side-lower');
  const { b1, b2, mid } = middle(hand);
  const goals = [
    { x: b1.x + 17, y: b1.y - 7 },
    { x: mid.x - 8, y: mid.y + 8 },
    { x: b2.x - 4, y: b2.y + 17 },
  ];
  goals.forEach((goal, i) => {
    const id = `add:${i}`;
    const { point } = hand.target(id);
    hand.pick(id);
    for (const [axis, way] of [
      ['x', { x: 1, y: 0 }],
      ['y', { x: 0, y: 1 }],
    ] as const) {
      const off = goal[axis] - point[axis];
      const sign = Math.sign(off);
      hand.nudge(id, 20 * sign * way.x, 20 * sign * way.y, Math.floor(Math.abs(off) / 20));
      hand.nudge(id, 2 * sign * way.x, 2 * sign * way.y, Math.round((Math.abs(off) % 20) / 2));
    }
    hand.pick(id);
  });
}

function cutAndTurn(hand: Learner, byKeys: boolean): void {
  hand.at('notches').take('notch');
  const line = () => hand.work.lines[0]!;
  const foot = (dart: string) =>
    nearestOnChain(line().chain, landmark(hand.work, `${dart}/bust-point`)).length;
  for (const at of [foot('right') - 42, foot('right') + 34, foot('left') - 38, foot('left') + 46])
    if (byKeys) {
      const near = Math.abs(at - foot('right')) < 60 ? 'right' : 'left';
      const by = at - foot(near);
      const id = `new:${near}`;
      hand
        .pick(id)
        .nudge(id, 2 * Math.sign(by), 0, Math.round(Math.abs(by) / 2))
        .pick(id);
    } else hand.down(pointAtLength(line().chain, at)).up();
  hand.at('working-darts').take('extend-dart');
  for (const dart of ['right', 'left']) {
    if (byKeys) hand.pick(`tip:${dart}`).pick(`to:${dart}`);
    else hand.drag(`tip:${dart}`, landmark(hand.work, `${dart}/bust-point`));
  }
  hand.at('connectors').take('connect');
  for (const dart of ['right', 'left']) {
    if (byKeys) hand.pick(`tip:${dart}`).pick(`tip:${dart}`);
    else hand.drag(`tip:${dart}`, pointAtLength(line().chain, foot(dart)));
  }
  for (const [step, dart] of [
    ['first-dart', 'right'],
    ['second-dart', 'left'],
  ] as const) {
    hand.at(step).take('slash');
    if (byKeys) hand.pick(`cut:${dart}`).pick(`tip:${dart}`);
    else hand.drag(`cut:${dart}`, hand.target(`tip:${dart}`).point);
    hand.take('turn');
    const other = hand.target(`turn:${dart}:rest`).point;
    if (byKeys) {
      const id = `turn:${dart}:freed`;
      const open = (work = hand.work) =>
        Math.abs(work.pieces[0]!.darts.find((one) => one.id === dart)!.residual);
      const tried = hand.nudge(id, 2).context.preview;
      const way = tried && open(tried) < open() ? 2 : -2;
      hand.escape();
      // On and on until it is told that the legs meet.
      for (let i = 0; i < 500 && !JSON.stringify(hand.context.proposal ?? '').includes('legs-meet'); i++)
        hand.nudge(id, way);
      hand.pick(id);
    } else hand.drag(`turn:${dart}:freed`, other);
  }
  hand.at('separate').take('separate');
  if (byKeys) hand.act('separate');
  else hand.down(hand.target('line:line').point, 'line:line').up();
  hand.take('overlay').act('overlay:upper').act('overlay:lower');
}

function finish(hand: Learner): void {
  hand.at('leftover').take('copy').act('copy:woven');
  const sides = [
    {
      piece: 'lower',
      dart: 'right',
      from: 'n1',
      to: 'n2',
      end: 'start',
      edge: 'right/shoulder',
      again: 'n1',
    },
    { piece: 'upper', dart: 'left', from: 'n3', to: 'n4', end: 'end', edge: 'left/side', again: 'n4' },
  ];
  hand.fabric = 'knit';
  for (const { piece, dart, from, to } of sides) {
    hand.take('bridge', { [`before:${piece}:${dart}`]: 25 });
    hand
      .nudge(`after:${piece}:${dart}`, 1, 0, 5)
      .pick(`after:${piece}:${dart}`)
      .act(`bridge:${piece}:${dart}`);
    hand.take('ease').pick(`notch:${piece}:${from}`).pick(`notch:${piece}:${to}`);
  }
  hand.fabric = 'woven';
  for (const { piece, dart, end, edge, again } of sides) {
    const id = `${piece}@woven`;
    hand.take('bridge').act(`bridge:${id}:${dart}`);
    hand.take('take-out').pick(`end:${id}:${end}`);
    hand.take('true').act(`true:${edge}`);
    hand.take('renotch').pick(`notch:${id}:${again}`);
  }
  hand.fabric = 'knit';
  hand.at('allowances').take('allow');
  for (const command of sample.commands)
    if (command.do === 'allow')
      hand.option('width', command.width).pick(`group:${command.piece}:${command.group}`);
  hand.take('corner');
  for (const command of sample.commands)
    if (command.do === 'corner')
      hand
        .option('form', command.form)
        .option('first', command.first === command.after ? 'after' : 'before')
        .pick(`corner:${command.piece}:${command.before}>${command.after}`);
  hand.take('carry-notches');
  for (const { id } of hand.targets) hand.pick(id);
  hand.at('label-and-grain').typed('label').take('grain');
  for (const { id } of hand.targets) hand.pick(id).pick(id);
  hand.at('walk-the-seams').take('walk');
  for (const seam of ['style-line', 'right/shoulder', 'left/shoulder', 'right/side', 'left/side'])
    hand.option('seam', seam).act(seam === 'style-line' ? 'says:eased' : 'says:match');
  hand.collect();
}

describe('the whole lesson through the tools', () => {
  it.each([
    ['pointer', lineByPointer, false],
    ['keys', lineByKeys, true],
  ] as const)('is accepted in every step, by %s', (_how, drawLine, byKeys) => {
    const hand = new Learner(startWork({ figure: 'F3' }));
    firstSteps(hand);
    drawLine(hand);
    cutAndTurn(hand, byKeys);
    finish(hand);
    expect(hand.refused).toEqual([]);
    const attempt = toAttempt({
      lesson: { id: lesson.id, content: lesson.content },
      block: { figure: 'F3' },
      fabric: 'knit',
      seed: 1,
      commands: hand.tagged,
    });
    const marks = gradeLesson(lesson, attempt);
    const wrong = marks.flatMap((mark) =>
      mark.findings
        .filter(({ state }) => state === 'wrong' || state === 'missing')
        .map(({ code }) => `${mark.step} ${code}`),
    );
    expect(wrong).toEqual([]);
    expect(marks.map(({ verdict }) => verdict)).toEqual(lesson.steps.map(() => 'accepted'));
    expect(chainLength(hand.work.lines[0]!.chain)).toBeGreaterThan(400);
  });
});

/** Putting drills: which there are, the score this player should expect, and what his scores say. Leaves out: figures, words. */
import { useEffect } from 'preact/hooks';
import { PlayerPanel } from '../../app/PlayerPanel.tsx';
import { RulesCaution } from '../../app/RulesCaution.tsx';
import { Chances, Expected } from './Expected.tsx';
import { GroundCard } from './GroundCard.tsx';
import { History } from './History.tsx';
import { Library } from './Library.tsx';
import { ScoreForm } from './ScoreForm.tsx';
import { SetUp } from './SetUp.tsx';
import { keepPractice } from './state.ts';
import { followExpectation } from './work.ts';
import '../decide/decide.css';
import './practice.css';

export const PracticeScreen = () => {
  useEffect(keepPractice, []);
  useEffect(followExpectation, []);
  return (
    <div class="practice">
      <Library />
      <div class="practice-main">
        <Expected />
        <SetUp />
        <ScoreForm />
        <History />
        <Chances />
      </div>
      <div class="practice-side">
        <GroundCard />
        <PlayerPanel />
        <RulesCaution />
      </div>
    </div>
  );
};

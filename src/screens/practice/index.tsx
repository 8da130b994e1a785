/** Putting drills: which there are, the score this player should expect, and what his scores say. Leaves out: figures, words. */
import { useEffect } from 'preact/hooks';
import { useLocation, useParams } from 'wouter-preact';
import { PlayerPanel } from '../../controls/PlayerPanel.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { followCarpet } from '../../state/carpet.ts';
import { Chances, Expected } from './Expected.tsx';
import { GroundCard } from './GroundCard.tsx';
import { History } from './History.tsx';
import { Library } from './Library.tsx';
import { ScoreForm } from './ScoreForm.tsx';
import { SetUp } from './SetUp.tsx';
import { keepPractice, openWith } from './state.ts';
import { followExpectation } from './work.ts';
import '../../controls/answers.css';
import './practice.css';

export const PracticeScreen = () => {
  useEffect(keepPractice, []);
  useEffect(followCarpet, []);
  useEffect(followExpectation, []);
  const { drill, on } = useParams<{ drill?: string; on?: string }>();
  const [, navigate] = useLocation();
  useEffect(() => {
    if (drill === undefined) return;
    openWith(drill, on);
    // Chosen once: what is chosen afterwards must survive a reload.
    navigate('/practice', { replace: true });
  }, [drill, on, navigate]);
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

import { useEffect, useState } from 'react';
import { plainText, type Sentence, Spoken } from './figure.tsx';

const quietMs = 400;

/** The sentence each page opens with; the picture below is its proof. Changes are spoken once they have held for 400 ms. */
export function Headline({ sentence }: { readonly sentence: Sentence }) {
  const text = plainText(sentence);
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setSpoken(text), quietMs);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <>
      <h1 className="headline">
        <Spoken sentence={sentence} />
      </h1>
      <p className="hidden-text" role="status" aria-live="polite">
        {spoken}
      </p>
    </>
  );
}

'use strict';
{
  // Both seatings always run, from one clock; only one is heard. So a switch is a crossfade and nothing has to be found again.
  const fade = 0.03; // seconds: too short to be heard as one, too long for a click
  const awaited = new Map(), sounds = new Map();
  let context, playing;
  window.spezzatoSound = (name, addresses) => awaited.get(name)?.(addresses);

  const bytes = address => Uint8Array.from(atob(address.slice(address.indexOf(',') + 1)), c => c.charCodeAt(0)).buffer;
  const fetched = (name, key) => new Promise((done, failed) => {
    awaited.set(name, done);
    const script = document.createElement('script');
    script.nonce = key;
    script.src = encodeURIComponent(name) + '.js';
    script.onerror = failed;
    document.head.append(script);
  });
  const soundOf = (name, key) => {
    if (!sounds.has(name)) sounds.set(name, fetched(name, key).then(pair => Promise.all(pair.map(one => context.decodeAudioData(bytes(one))))));
    return sounds.get(name);
  };
  const turn = (gain, to) => {
    const now = context.currentTime;
    gain.cancelScheduledValues(now);
    gain.setValueAtTime(gain.value, now);
    gain.linearRampToValueAtTime(to, now + fade);
  };

  for (const player of document.querySelectorAll('.player')) {
    const button = player.querySelector('button'), seat = player.querySelector('select'), said = player.querySelector('output'), words = button.textContent;
    const chosen = () => Number(player.querySelector('input:checked').value);
    const name = () => player.dataset.file + '-' + seat.value;
    const silence = () => {
      if (playing?.player !== player) return;
      for (const voice of playing.voices) {
        turn(voice.gain.gain, 0);
        voice.source.onended = null;
        voice.source.stop(context.currentTime + fade);
      }
      playing = undefined;
      button.textContent = words;
    };
    const begin = (pair, from) => {
      playing?.stop();
      const when = context.currentTime + 0.05, at = chosen();
      const voices = pair.map((buffer, version) => {
        const source = new AudioBufferSourceNode(context, { buffer }), gain = new GainNode(context, { gain: 0 });
        gain.gain.setValueAtTime(0, when);
        gain.gain.linearRampToValueAtTime(version === at ? 1 : 0, when + fade);
        source.connect(gain).connect(context.destination);
        source.start(when, from);
        return { source, gain };
      });
      voices[0].source.onended = silence;
      playing = { player, voices, began: when - from, stop: silence };
      button.textContent = player.dataset.stop;
    };
    const play = async from => {
      context ??= new AudioContext();
      await context.resume();
      said.textContent = '';
      try {
        begin(await soundOf(name(), player.dataset.key), from());
      } catch (error) {
        sounds.delete(name());
        said.textContent = player.dataset.missing;
      }
    };
    button.addEventListener('click', () => playing?.player === player ? silence() : play(() => 0));
    player.querySelector('fieldset').addEventListener('input', () => {
      if (playing?.player === player) playing.voices.forEach((voice, version) => turn(voice.gain.gain, version === chosen() ? 1 : 0));
    });
    seat.addEventListener('input', () => {
      if (playing?.player === player) play(() => Math.max(0, playing?.player === player ? context.currentTime - playing.began : 0));
    });
    player.hidden = false;
  }
}

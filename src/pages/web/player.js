'use strict';
{
  // Both seatings always run, from one clock; only one is heard. So a switch is a crossfade and nothing has to be found again.
  const fade = 0.03; // seconds: too short to be heard as one, too long for a click
  const ahead = 0.05; // seconds from asking to sounding, so that a busy machine too hears every fade from its beginning
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
  // A fade begins where the one before has ended: so none is ever broken off. Gives the moment at which it has ended.
  const turn = (voice, to) => {
    const begins = Math.max(context.currentTime + ahead, voice.settled);
    voice.settled = begins + fade;
    voice.gain.gain.setValueAtTime(voice.level, begins);
    voice.gain.gain.linearRampToValueAtTime(voice.level = to, voice.settled);
    return voice.settled;
  };

  for (const player of document.querySelectorAll('.player')) {
    const button = player.querySelector('button'), seat = player.querySelector('select'), said = player.querySelector('output'), words = button.textContent;
    const chosen = () => Number(player.querySelector('input:checked').value);
    const name = () => player.dataset.file + '-' + seat.value;
    const silence = () => {
      if (playing?.player !== player) return;
      for (const voice of playing.voices) {
        voice.source.onended = null;
        voice.source.stop(turn(voice, 0));
      }
      playing = undefined;
      button.textContent = words;
    };
    const begin = (pair, from) => {
      playing?.stop();
      const when = context.currentTime + ahead, at = chosen();
      const voices = pair.map((buffer, version) => {
        const source = new AudioBufferSourceNode(context, { buffer }), gain = new GainNode(context, { gain: 0 });
        const voice = { source, gain, level: 0, settled: when };
        turn(voice, version === at ? 1 : 0);
        source.connect(gain).connect(context.destination);
        source.start(when, from);
        return voice;
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
      if (playing?.player === player) playing.voices.forEach((voice, version) => turn(voice, version === chosen() ? 1 : 0));
    });
    seat.addEventListener('input', () => {
      if (playing?.player === player) play(() => Math.max(0, playing?.player === player ? context.currentTime - playing.began : 0));
    });
    player.hidden = false;
  }
}

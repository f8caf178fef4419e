using System.Globalization;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>
/// Shows the pattern of each verdict on its own pin, one after the other, and the beeps, for a person who proves the wiring.
/// It ends with the lamp of wait, whatever ends it.
/// </summary>
/// <param name="pins">The pins.</param>
/// <param name="options">The wiring.</param>
/// <param name="time">The clock.</param>
/// <param name="output">Where to say what must be seen.</param>
internal sealed class LampShow(LampPins pins, LightOptions options, TimeProvider time, TextWriter output)
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private readonly Dictionary<string, LampTrial> _trials = [];
    private IReadOnlyList<string> _faults = [];

    /// <summary>What was driven to its end, or could not be, by the id of the output; a pattern that was cut short is not among them.</summary>
    public IReadOnlyDictionary<string, LampTrial> Trials => _trials;

    /// <summary>Runs the show.</summary>
    /// <param name="each">How long each pattern is shown.</param>
    /// <param name="cancellationToken">Ends it early.</param>
    /// <returns>False when a pin could not be driven; the rest is then left out.</returns>
    public async Task<bool> RunAsync(TimeSpan each, CancellationToken cancellationToken)
    {
        bool isGood = true;
        try
        {
            isGood = await ShowAsync(each, cancellationToken);
        }
        finally
        {
            isGood &= await WriteAsync([Lamp.Red]);
        }

        await output.WriteLineAsync($"end        red on GPIO {options.RedPin}, as long as the pin keeps its level; every other output off");
        return isGood;
    }

    private async Task<bool> ShowAsync(TimeSpan each, CancellationToken cancellationToken)
    {
        foreach (Verdict verdict in (Verdict[])[Verdict.Wait, Verdict.SlowDown, Verdict.Spray])
        {
            LampPattern pattern = LightPatterns.Of(verdict);
            await output.WriteLineAsync($"{verdict.Word(),-9}  {Colour(pattern.Lamp)} on GPIO {Pin(pattern.Lamp)}, {Rhythm(pattern)}");
            if (!await PlayAsync(pattern.Lamp, pattern.IsOn, each, cancellationToken))
            {
                return false;
            }
        }

        if (options.BuzzerPin is not { } pin || options.BuzzerSilent)
        {
            await output.WriteLineAsync(options.BuzzerPin is null ? "buzzer     not fitted" : "buzzer     not sounded: light:buzzerSilent is true");
            return true;
        }

        foreach (Verdict verdict in (Verdict[])[Verdict.SlowDown, Verdict.Wait])
        {
            BeepPattern beeps = LightPatterns.BeepFor(verdict);
            await output.WriteLineAsync($"buzzer     on GPIO {pin}, {beeps.Count} {(beeps.Count == 1 ? "beep" : "beeps")}: {verdict.Word()}");
            if (!await PlayAsync(Lamp.Buzzer, beeps.IsOn, (beeps.Count * (beeps.On + beeps.Off)) + Pause, cancellationToken))
            {
                return false;
            }
        }

        return true;
    }

    private async Task<bool> PlayAsync(Lamp lamp, Func<TimeSpan, bool> isOn, TimeSpan length, CancellationToken cancellationToken)
    {
        DateTimeOffset began = time.GetUtcNow();
        long start = time.GetTimestamp();
        for (TimeSpan elapsed = TimeSpan.Zero; elapsed < length; elapsed = time.GetElapsedTime(start))
        {
            if (!await WriteAsync(isOn(elapsed) ? [lamp] : []))
            {
                Note(lamp, began, _faults);
                return false;
            }

            await Task.Delay(LightPatterns.Step, time, cancellationToken);
        }

        Note(lamp, began, []);
        return true;
    }

    private void Note(Lamp lamp, DateTimeOffset began, IReadOnlyList<string> faults) =>
        _trials[Colour(lamp)] = new LampTrial(options.WiringOf(Pin(lamp)), began, faults.Count == 0 ? null : string.Join("; ", faults));

    private async Task<bool> WriteAsync(HashSet<Lamp> on)
    {
        _faults = pins.Write(on, retryFailed: true);
        foreach (string fault in _faults)
        {
            await output.WriteLineAsync($"FAILED     {fault}");
        }

        return _faults.Count == 0;
    }

    private int Pin(Lamp lamp) => lamp switch
    {
        Lamp.Green => options.GreenPin,
        Lamp.Yellow => options.YellowPin,
        Lamp.Buzzer => options.BuzzerPin ?? -1,
        _ => options.RedPin,
    };

    private static string Colour(Lamp lamp) => lamp.ToString().ToLowerInvariant();

    private static string Rhythm(LampPattern pattern) => pattern.Off == TimeSpan.Zero
        ? "steady"
        : string.Create(CultureInfo.InvariantCulture, $"{pattern.On.TotalSeconds:0.#} s on, {pattern.Off.TotalSeconds:0.#} s off");
}

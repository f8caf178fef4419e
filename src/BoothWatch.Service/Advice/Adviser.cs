using System.Collections.Immutable;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Limits;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Sensors;
using BoothWatch.Solvents;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Advice;

/// <summary>Answers questions with the physics and the rules of the booth.</summary>
/// <param name="defaults">What holds where an argument is not given.</param>
/// <param name="catalogue">The materials.</param>
/// <param name="policy">Gives the limits that hold now.</param>
internal sealed class Adviser(AdviseDefaults defaults, MaterialCatalogue catalogue, Func<VerdictPolicy> policy) : IDisposable
{
    /// <summary>The sections of the configuration that it reads.</summary>
    public static readonly string[] Sections = [BoothOptions.Section, CoatOptions.Section, VerdictPolicy.Section, LimitOptions.Section];

    // One a thread: a model answers one caller at a time. The altitude does not matter, the pressure is always given.
    private readonly ThreadLocal<BlushModel> _model = new(() => new BlushModel());

    /// <summary>The unit that the text of an answer is written in, reasons included.</summary>
    public TemperatureUnit Unit => policy().TemperatureUnit;

    /// <summary>An adviser with the settings of a checked configuration.</summary>
    public static Adviser From(ConfigurationFile file)
    {
        T Bind<T>() => (T)ConfigurationSections.Bind(file.Configuration, typeof(T));
        BoothOptions booth = Bind<BoothOptions>();
        VerdictPolicy policy = Bind<VerdictPolicy>().SpeakingIn(booth.Unit);
        AdviseDefaults defaults = AdviseDefaults.From(booth, Bind<CoatOptions>()) with { MissesShopLimit = Bind<LimitOptions>().Enabled };
        return new Adviser(defaults, MaterialsLoader.Load(file.MaterialsFolder), () => policy);
    }

    /// <summary>The answer, or null and what is wrong with the question.</summary>
    public AdviseAnswer? Answer(IReadOnlyDictionary<string, string> given, out IReadOnlyList<ArgumentError> errors)
    {
        AdviseRequest? request = Read(given, out errors);
        return request is null ? null : Answer(request);
    }

    /// <summary>The question with every value filled in, or null and what is wrong with it.</summary>
    public AdviseRequest? Read(IReadOnlyDictionary<string, string> given, out IReadOnlyList<ArgumentError> errors)
    {
        AdviseRequest? request = AdviseRequestParser.Parse(defaults, given, out errors);
        if (request is null)
        {
            return null;
        }

        errors = [.. UnknownMaterials(request)];
        return errors.Count > 0 ? null : request;
    }

    /// <inheritdoc/>
    public void Dispose() => _model.Dispose();

    private AdviseAnswer Answer(AdviseRequest request)
    {
        CoatPlan plan = PlanOf(request);
        VerdictPolicy limits = request.RequiredMarginC is { } margin ? policy().Wanting(margin) : policy();
        Assessor assessor = new(limits, _model.Value!.Assess, altitudeM: 0);
        return new AdviseAnswer(request, plan.Substrate.Id, plan.Body.ThicknessM * 1000, assessor.Assess(SnapshotOf(request), plan), limits.RequiredMarginC);
    }

    private CoatPlan PlanOf(AdviseRequest request)
    {
        if (request.Mix is not { } mix)
        {
            return CoatPlanner.Plan(request.Coat, catalogue);
        }

        var solvents = mix.Solvents.Select(part => (catalogue.Solvents[part.Key], part.Value)).ToList();
        Substrate substrate = request.Substrate ?? catalogue.Substrates[request.Coat.Substrate];
        return CoatPlanner.Plan(request.Coat, catalogue, new Mix(solvents, mix.PolymerVolumeFraction), mix.Name!, substrate);
    }

    private IEnumerable<ArgumentError> UnknownMaterials(AdviseRequest request)
    {
        CoatOptions coat = request.Coat;
        (AdviseArgument Argument, string Id, IEnumerable<string> Known)[] named =
        [
            (AdviseArguments.LacquerMaterial, coat.Lacquer!, catalogue.Lacquers.Keys),
            (AdviseArguments.ThinnerMaterial, coat.Thinner, catalogue.Thinners.Keys),
            (AdviseArguments.RetarderMaterial, coat.Retarder, catalogue.Retarders.Keys),
            (AdviseArguments.Substrate, coat.Substrate, catalogue.Substrates.Keys),
        ];
        foreach ((AdviseArgument argument, string id, IEnumerable<string> known) in named)
        {
            if (!known.Contains(id, StringComparer.OrdinalIgnoreCase))
            {
                yield return new ArgumentError(argument.Name, id, $"it is not in config/materials; {NearestName.Hint(id, known)}");
            }
        }

        foreach (string id in request.Mix?.Solvents.Keys.Where(id => !catalogue.Solvents.ContainsKey(id)) ?? [])
        {
            yield return new ArgumentError(AdviseArguments.Mix.Name, id, $"it is not a solvent of config/materials; {NearestName.Hint(id, catalogue.Solvents.Keys)}");
        }

        foreach (IGrouping<Solvent, string> twice in request.Mix?.Solvents.Keys
            .Where(catalogue.Solvents.ContainsKey).GroupBy(id => catalogue.Solvents[id]).Where(names => names.Count() > 1) ?? [])
        {
            yield return new ArgumentError(AdviseArguments.Mix.Name, string.Join(", ", twice), "these are names of one solvent; add its fractions into one entry");
        }
    }

    // What was given counts as measured well; the exhaust and the clock count as good, and the answer says that nobody looked.
    private static BoothSnapshot SnapshotOf(AdviseRequest request)
    {
        double temperatureC = Uncertainty.FromTolerances(request.TemperatureToleranceC);
        double humidityPct = Uncertainty.FromTolerances(request.HumidityTolerancePct);
        (Quantity Quantity, double Value, double Uncertainty)[] values =
        [
            (Quantity.BoothTemperature, request.Air.TemperatureC, temperatureC),
            (Quantity.BoothHumidity, request.Air.RelativeHumidityPct, humidityPct),
            (Quantity.StationPressure, request.Air.PressurePa, 0),
            (Quantity.PieceTemperature, request.PieceC, temperatureC),
            (Quantity.ExhaustProof, 1, 0),
        ];
        return new BoothSnapshot(
            DateTimeOffset.UnixEpoch,
            ClockProven: true,
            values.ToImmutableDictionary(
                value => value.Quantity,
                value => new Reading(value.Quantity, "given", value.Value, value.Uncertainty, TimeSpan.Zero, ReadingQuality.Good, null)));
    }
}

using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Warming;

namespace BoothWatch.Verdicts;

/// <summary>When the piece is as warm as its rules ask: from its own trail where that says enough, else from the model of a plane body.</summary>
internal static class WarmingEstimate
{
    /// <summary>The air must be warmer than the target by this, °C: the last digit that is shown.</summary>
    private const double ShownC = 0.1;

    /// <summary>A range from the trail is of use when its most is no more than this times its least, or than <see cref="NarrowS"/> above it. Own choice.</summary>
    private const double WideRange = 3;

    /// <summary>See <see cref="WideRange"/>, s.</summary>
    private const double NarrowS = 300;

    /// <summary>The estimate; null where air or piece are not known.</summary>
    /// <param name="air">The air; null when it is not known.</param>
    /// <param name="readings">The readings and the limits.</param>
    /// <param name="plan">The coat, for thickness and material of the piece; null when none is chosen.</param>
    /// <param name="trail">What the last minutes measured; null where nobody measures.</param>
    public static PieceWarming? Of(MoistAir? air, Evidence readings, CoatPlan? plan, WarmingTrail? trail)
    {
        if (air is null || readings.Trusted(Quantity.PieceTemperature) is not double pieceC)
        {
            return null;
        }

        double dewPointC = air.DewPointC;
        double targetC = readings.Policy.WarmEnoughC(air.TemperatureC, dewPointC);
        PieceWarming warming = new()
        {
            State = WarmingState.Unknown,
            TargetC = targetC,
            TargetFrom = targetC > dewPointC + readings.Policy.DewClearanceC ? WarmingTarget.Air : WarmingTarget.DewPoint,
            ClearanceC = pieceC - dewPointC,
        };
        return trail is { IsUnsettled: true } ? warming
            : pieceC >= targetC ? warming with { State = WarmingState.Warm, WarmSinceS = trail?.SinceBelowS(targetC) }
            : air.TemperatureC - targetC < ShownC ? warming with { State = WarmingState.AirTooCold }
            : Better(Measured(warming, air, readings, plan, trail), Modelled(warming, air, readings, plan, trail)) ?? warming;
    }

    // The trail takes over once its range is narrow enough to be of use, or as soon as it proves the model wrong.
    private static PieceWarming? Better(PieceWarming? measured, PieceWarming? modelled)
    {
        if (measured is not { LeastS: double leastS } || modelled is not { LeastS: double modelLeastS })
        {
            return measured ?? modelled;
        }

        bool isNarrow = measured.MostS is { } most && most <= Math.Max(WideRange * leastS, leastS + NarrowS);
        bool isApart = leastS > (modelled.MostS ?? double.PositiveInfinity) || (measured.MostS ?? double.PositiveInfinity) < modelLeastS;
        return isNarrow || isApart ? measured : modelled;
    }

    private static PieceWarming? Measured(PieceWarming warming, MoistAir air, Evidence readings, CoatPlan? plan, WarmingTrail? trail)
    {
        double disagreeC = double.Hypot(
            readings[Quantity.PieceTemperature].StandardUncertainty, readings[Quantity.BoothTemperature].StandardUncertainty);
        BodyGuess? guess = plan is null ? null : BodyGuess.Of(plan.Body, air, plan.AirSpeedMPerS);
        WarmingFit? fit = trail?.Fit();
        if (trail is null || fit?.Until(air.TemperatureC, warming.TargetC, disagreeC, guess) is not { } time)
        {
            return null;
        }

        if (time.LeastS > WarmingFit.StillS && !fit.HasRisen)
        {
            return warming with { State = WarmingState.NotWarming };
        }

        double? coreC = plan is null ? null
            : SlabWarming.Surface(plan.Body, air, plan.AirSpeedMPerS, SlabWarming.LengthM, trail.Points[0].PieceC, warming.TargetC)?.CoreC;
        return With(warming, time, WarmingBasis.Measured, coreC);
    }

    private static PieceWarming? Modelled(PieceWarming warming, MoistAir air, Evidence readings, CoatPlan? plan, WarmingTrail? trail)
    {
        Reading piece = readings[Quantity.PieceTemperature];
        if (plan is null || piece.Value is not double pieceC
            || SlabWarming.Until(plan.Body, air, plan.AirSpeedMPerS, pieceC, piece.StandardUncertainty, warming.TargetC) is not { } time)
        {
            return null;
        }

        // A value typed in some time ago has been warming since.
        double ageS = piece.Age.TotalSeconds * (trail?.Speed ?? 1);
        WarmingTime left = new(Math.Max(0, time.LeftS - ageS), Math.Max(0, time.LeastS - ageS), time.MostS is { } most ? Math.Max(0, most - ageS) : null);
        double? coreC = SlabWarming.Surface(plan.Body, air, plan.AirSpeedMPerS, SlabWarming.LengthM, pieceC, warming.TargetC)?.CoreC;
        return With(warming, left, WarmingBasis.Model, coreC);
    }

    private static PieceWarming With(PieceWarming warming, WarmingTime time, WarmingBasis basis, double? coreC) => warming with
    {
        State = WarmingState.Warming,
        LeftS = time.LeftS,
        LeastS = time.LeastS,
        MostS = time.MostS,
        Basis = basis,
        CoreColderC = coreC is { } core ? Math.Max(0, warming.TargetC - core) : null,
    };
}

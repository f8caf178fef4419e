using System.Globalization;

namespace BoothWatch.Solvents;

/// <summary>What is in the cup: solvents and polymer by volume.</summary>
/// <remarks>
/// Volumes are taken as additive when mixes are poured together (real blends shrink or swell by well under 1 %).
/// Two mixes are equal when they hold the same solvents in the same fractions and order.
/// </remarks>
/// <param name="Solvents">Volume fraction of each solvent in the whole mix, 0 to 1.</param>
/// <param name="PolymerVolumeFraction">Volume fraction of everything that stays, 0 to 1; all fractions sum to 1.</param>
/// <exception cref="ArgumentException">A fraction is negative or not a number, the sum is not 1 within 0.001, or a solvent stands twice.</exception>
public sealed record Mix(IReadOnlyList<(Solvent Solvent, double VolumeFraction)> Solvents, double PolymerVolumeFraction)
{
    /// <summary>How far the sum of the fractions may be from 1; within it they are scaled to 1.</summary>
    public const double SumTolerance = 1e-3;

    private readonly int _hash = Hash(Solvents, PolymerVolumeFraction);

    /// <summary>Volume fraction of each solvent in the whole mix, 0 to 1.</summary>
    public IReadOnlyList<(Solvent Solvent, double VolumeFraction)> Solvents { get; } = Checked(Solvents, PolymerVolumeFraction);

    /// <summary>Volume fraction of everything that stays, 0 to 1.</summary>
    public double PolymerVolumeFraction { get; } = PolymerVolumeFraction;

    /// <summary>This mix with another poured in.</summary>
    /// <param name="volume">Volume of this mix, any unit, positive.</param>
    /// <param name="other">The other mix.</param>
    /// <param name="otherVolume">Volume of the other mix, same unit, zero or more.</param>
    public Mix With(double volume, Mix other, double otherVolume)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (!(volume > 0) || !(otherVolume >= 0) || double.IsInfinity(volume + otherVolume))
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"volumes to mix are {volume} and {otherVolume}; give a positive volume and one of zero or more"));
        }

        double share = volume / (volume + otherVolume);
        List<(Solvent Solvent, double VolumeFraction)> blend = [];
        foreach ((Solvent solvent, double fraction) in Solvents)
        {
            blend.Add((solvent, fraction * share));
        }

        foreach ((Solvent solvent, double fraction) in other.Solvents)
        {
            int at = blend.FindIndex(entry => entry.Solvent.Id == solvent.Id);
            double added = fraction * (1 - share);
            if (at >= 0)
            {
                blend[at] = (solvent, blend[at].VolumeFraction + added);
            }
            else
            {
                blend.Add((solvent, added));
            }
        }

        double polymer = (PolymerVolumeFraction * share) + (other.PolymerVolumeFraction * (1 - share));
        return new Mix(blend, polymer);
    }

    /// <inheritdoc/>
    public bool Equals(Mix? other)
    {
        if (ReferenceEquals(this, other))
        {
            return true;
        }

        if (other is null || _hash != other._hash || PolymerVolumeFraction != other.PolymerVolumeFraction || Solvents.Count != other.Solvents.Count)
        {
            return false;
        }

        for (int i = 0; i < Solvents.Count; i++)
        {
            if (Solvents[i].Solvent.Id != other.Solvents[i].Solvent.Id || Solvents[i].VolumeFraction != other.Solvents[i].VolumeFraction)
            {
                return false;
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public override int GetHashCode() => _hash;

    private static int Hash(IReadOnlyList<(Solvent Solvent, double VolumeFraction)> solvents, double polymer)
    {
        HashCode hash = default;
        hash.Add(polymer);
        foreach ((Solvent solvent, double fraction) in solvents)
        {
            hash.Add(solvent.Id);
            hash.Add(fraction);
        }

        return hash.ToHashCode();
    }

    private static IReadOnlyList<(Solvent Solvent, double VolumeFraction)> Checked(
        IReadOnlyList<(Solvent Solvent, double VolumeFraction)> solvents, double polymer)
    {
        if (!(polymer is >= 0 and <= 1))
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture, $"polymer volume fraction is {polymer}; give a number from 0 to 1, for example 0.14"));
        }

        double sum = polymer;
        HashSet<string> seen = [];
        foreach ((Solvent solvent, double fraction) in solvents)
        {
            if (!(fraction is >= 0 and <= 1))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture, $"volume fraction of {solvent.Id} is {fraction}; give a number from 0 to 1, for example 0.25"));
            }

            if (!seen.Add(solvent.Id))
            {
                throw new ArgumentException($"{solvent.Id} stands twice in the mix; add its fractions into one entry");
            }

            sum += fraction;
        }

        if (Math.Abs(sum - 1) > SumTolerance)
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"volume fractions of polymer and solvents sum to {sum:0.####}; they must sum to 1: scale them or add what is missing"));
        }

        return [.. solvents.Where(entry => entry.VolumeFraction > 0)];
    }
}

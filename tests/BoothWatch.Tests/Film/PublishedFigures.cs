namespace BoothWatch.Tests.Film;

/// <summary>Figures from outside the project that the film model is held against, by tests and in the plots of the method.</summary>
internal static class PublishedFigures
{
    /// <summary>
    /// Evaporation rates, n-butyl acetate = 1 (ASTM D3539 type): data sheets of solvent makers and safety data sheets as collected with the
    /// property data; methyl acetate, isopropyl acetate, methyl n-amyl ketone, diacetone alcohol, n-butanol, toluene, ethyl 3-ethoxypropionate
    /// and n-amyl acetate from memory. The vapour pressure of ethyl 3-ethoxypropionate was replaced because of this very comparison, so that
    /// its row proves less than the others.
    /// </summary>
    public static readonly (string Solvent, double Rate)[] EvaporationRates =
    [
        ("acetone", 5.6), ("methyl acetate", 6.2), ("methyl ethyl ketone", 3.8), ("ethyl acetate", 4.1),
        ("isopropyl acetate", 3.0), ("n-propyl acetate", 2.3), ("isobutyl acetate", 1.4), ("methyl n-propyl ketone", 2.34),
        ("methyl isobutyl ketone", 1.6), ("methyl n-amyl ketone", 0.4), ("methyl isoamyl ketone", 0.5),
        ("1-methoxy-2-propyl acetate", 0.34), ("1-methoxy-2-propanol", 0.62), ("1-propoxy-2-propanol", 0.21),
        ("2-butoxyethanol", 0.08), ("diisobutyl ketone", 0.2), ("diacetone alcohol", 0.12), ("cyclohexanone", 0.3),
        ("isobutanol", 0.6), ("n-butanol", 0.44), ("toluene", 1.9), ("m-xylene", 0.7), ("o-xylene", 0.6), ("p-xylene", 0.7),
        ("ethanol", 1.4), ("isopropanol", 1.7), ("ethyl 3-ethoxypropionate", 0.12), ("isobutyl isobutyrate", 0.43),
        ("n-heptane", 3.3), ("2-ethoxyethyl acetate", 0.2), ("n-amyl acetate", 0.4),
    ];

    /// <summary>
    /// Blush resistance of neat solvents, % RH at 26.7 °C. n-butyl acetate: supplier's data sheet. All others from memory of the selector
    /// charts of solvent makers: they rank, they do not calibrate.
    /// </summary>
    public static readonly (string Solvent, double Pct)[] BlushResistance =
    [
        ("ethyl acetate", 38), ("methyl ethyl ketone", 45), ("n-propyl acetate", 65), ("methyl isobutyl ketone", 78), ("isobutyl acetate", 78),
        ("n-butyl acetate", 83), ("methyl isoamyl ketone", 89), ("1-methoxy-2-propyl acetate", 92), ("methyl n-amyl ketone", 93),
        ("ethyl 3-ethoxypropionate", 94), ("2-butoxyethanol", 96),
    ];
}

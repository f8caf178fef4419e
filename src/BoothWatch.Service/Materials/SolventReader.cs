using BoothWatch.Solvents;

namespace BoothWatch.Service.Materials;

/// <summary>Reads one solvent of solvents.json.</summary>
internal static class SolventReader
{
    /// <summary>Reads the solvent; errors go to the node.</summary>
    public static Solvent Read(MaterialNode node, string id)
    {
        double? diffusivity = node.OptionalNumber("measuredDiffusivityCm2PerS", 0.01, 1, "cm²/s", 0.07);
        return new Solvent(id)
        {
            Name = node.Text("name"),
            CasNumber = node.Text("cas"),
            MolarMassKgPerMol = node.Number("molarMassGPerMol", 10, 500, "g/mol", 116.16) * 1e-3,
            VapourPressure = Pressure(node.Inner("vapourPressure")),
            CriticalTemperatureK = node.Number("criticalTemperatureK", 400, 1000, "K", 575.4),
            HeatOfVaporisation25CJPerMol = node.Number("heatOfVaporisation25CKJPerMol", 10, 150, "kJ/mol", 43.86) * 1e3,
            LiquidDensityKgPerM3 = node.Number("liquidDensity20CGPerMl", 0.4, 2, "g/mL", 0.88) * 1e3,
            LiquidHeatCapacityJPerMolK = node.Number("liquidHeatCapacity25CJPerMolK", 30, 1000, "J/(mol K)", 227.8),
            FullerVolumeCm3PerMol = node.Number("fullerVolumeCm3PerMol", 5, 1000, "cm³/mol", 135),
            MeasuredDiffusivityM2PerS = diffusivity * 1e-4,
            MeasuredDiffusivityAtC = node.OptionalNumber("measuredDiffusivityAtC", -50, 200, "°C", 0) ?? 25,
            Sources = Sources(node.Inner("sources")),
        };
    }

    private static Dictionary<string, string> Sources(MaterialNode? node) =>
        node?.Keys().ToDictionary(key => key, node.Text) ?? [];

    private static VapourPressure Pressure(MaterialNode? node)
    {
        if (node is null)
        {
            return VapourPressure.AntoineLn(0, 0, 0);
        }

        string form = node.Text("form");
        double[]? c = form switch
        {
            "dippr101" => node.Numbers("coefficients", 5),
            "antoineLn" => node.Numbers("coefficients", 3),
            _ => null,
        };
        double lowest = node.OptionalNumber("lowestC", -200, 500, "°C", 20) ?? double.NaN;
        double highest = node.OptionalNumber("highestC", -200, 500, "°C", 130) ?? double.NaN;
        if (form.Length > 0 && form is not ("dippr101" or "antoineLn"))
        {
            node.Fail("form", $"is {form}; give dippr101 or antoineLn");
        }

        if (c is null)
        {
            return VapourPressure.AntoineLn(0, 0, 0);
        }

        VapourPressure correlation = form == "dippr101"
            ? VapourPressure.Dippr101(c[0], c[1], c[2], c[3], c[4])
            : VapourPressure.AntoineLn(c[0], c[1], c[2]);
        correlation = correlation with { LowestC = lowest, HighestC = highest };
        double at25C = correlation.AtC(25);
        if (!(at25C is > 0.1 and < 200000))
        {
            node.Fail("coefficients", FormattableString.Invariant(
                $"give {at25C:G3} Pa at 25 °C; a lacquer solvent has 0.1 to 200000 Pa: check units (Pa, K, natural logarithm)"));
        }

        return correlation;
    }
}

using System.Globalization;
using System.Text;
using BoothWatch.Film;
using BoothWatch.Solvents;
using BoothWatch.Tests.Film;

namespace BoothWatch.Benchmarks.Film;

/// <summary>Rewrites the tables of the film method in place, each between its two marks.</summary>
internal static class FilmTables
{
    /// <summary>Temperatures of the critical humidity table, °C.</summary>
    public static readonly double[] TemperaturesC = [10, 15, 20, 25, 30, 35];

    /// <summary>Retarder levels of the critical humidity table, %.</summary>
    public static readonly double[] LevelsPct = [0, 5, 10, 15];

    /// <summary>Coats of the tables: name, mix without retarder, wet film in µm.</summary>
    public static readonly (string Name, Mix Mix, double WetFilmUm)[] Coats =
    [
        ("clear, 1 part lacquer to 1 part thinner, 75 µm", TestCoat.Thinned("ordinary thinner"), 75),
        ("flash, 1 part lacquer to 4 parts thinner, 40 µm", TestCoat.Thinned("ordinary thinner", 4), 40),
    ];

    /// <summary>Rewrites the file.</summary>
    public static int Rewrite(string file, TextWriter output)
    {
        string text = File.ReadAllText(file);
        foreach ((string mark, Func<string> table) in (ReadOnlySpan<(string, Func<string>)>)
        [
            ("critical-humidity", CriticalHumidityTable),
            ("spread", SpreadTable),
            ("blush-resistance", BlushResistanceTable),
            ("evaporation-rates", EvaporationTable),
        ])
        {
            string open = $"<!-- table {mark} -->";
            string close = $"<!-- end of table {mark} -->";
            int from = text.IndexOf(open, StringComparison.Ordinal);
            int to = text.IndexOf(close, StringComparison.Ordinal);
            if (from < 0 || to < from)
            {
                output.WriteLine("{0}: no marks {1} and {2}; put both there", file, open, close);
                return 2;
            }

            text = text[..(from + open.Length)] + "\n\n" + table() + "\n" + text[to..];
        }

        File.WriteAllText(file, text);
        output.WriteLine("{0} rewritten", file);
        return 0;
    }

    private static string CriticalHumidityTable()
    {
        StringBuilder table = new();
        foreach ((string name, Mix mix, double wetFilmUm) in Coats)
        {
            table.Append('\n').Append("Coat: ").Append(name).Append(". Critical humidity, % RH (time to set at 60 % RH, s).\n\n");
            table.Append("| air and piece, °C | ").AppendJoin(" | ", LevelsPct.Select(level => F($"{level} % retarder"))).Append(" |\n");
            table.Append("| --: |").Insert(table.Length, " --: |", LevelsPct.Length).Append('\n');
            foreach (double airC in TemperaturesC)
            {
                table.Append(F($"| {airC} |"));
                foreach (double level in LevelsPct)
                {
                    CoatConditions coat = TestCoat.Conditions(TestCoat.Retarded(mix, level), airC, wetFilmUm: wetFilmUm);
                    DryingResult run = DryingRun.Simulate(coat, TestCoat.VapourPressurePa(airC, 60));
                    table.Append(F($" {TestCoat.CriticalPct(coat):0} ({run.TimeToSetS:0}) |"));
                }

                table.Append('\n');
            }
        }

        return table.ToString().TrimStart('\n');
    }

    private static string SpreadTable()
    {
        StringBuilder table = new("| change | clear 15 °C | clear 25 °C | clear 25 °C, 10 % | flash 25 °C | flash 25 °C, 5 % |\n| --- | --: | --: | --: | --: | --: |\n");
        for (int i = 0; i < Variations.All.Length; i++)
        {
            double Change(int coat, double level, double airC) =>
                Math.Round(Variations.ChangeC(i, TestCoat.Retarded(Coats[coat].Mix, level), Coats[coat].WetFilmUm, airC), 2) + 0.0;
            table.Append(F($"| {Variations.All[i].Name} | {Change(0, 0, 15):+0.00;-0.00;0.00} | {Change(0, 0, 25):+0.00;-0.00;0.00} | {Change(0, 10, 25):+0.00;-0.00;0.00} | {Change(1, 0, 25):+0.00;-0.00;0.00} | {Change(1, 5, 25):+0.00;-0.00;0.00} |\n"));
        }

        return table.ToString();
    }

    private static string BlushResistanceTable()
    {
        StringBuilder table = new("| neat solvent | printed or remembered, % | 1 mm glass, % | difference | 3 mm glass, % |\n| --- | --: | --: | --: | --: |\n");
        foreach ((string solvent, double pct) in PublishedFigures.BlushResistance)
        {
            double model = TestCoat.BlushResistancePct(solvent);
            table.Append(F($"| {solvent} | {pct} | {model:0} | {model - pct:+0;-0;0} | {TestCoat.BlushResistancePct(solvent, 0.003):0} |\n"));
        }

        foreach (string solvent in (string[])["acetone", "methyl acetate"])
        {
            table.Append(F($"| {solvent} | none kept | {TestCoat.BlushResistancePct(solvent):0} | | {TestCoat.BlushResistancePct(solvent, 0.003):0} |\n"));
        }

        return table.ToString();
    }

    private static string EvaporationTable()
    {
        double reference = TestCoat.NinetyPercentS("n-butyl acetate");
        StringBuilder table = new("| solvent | published | model | model over published |\n| --- | --: | --: | --: |\n");
        foreach ((string solvent, double rate) in PublishedFigures.EvaporationRates)
        {
            double model = reference / TestCoat.NinetyPercentS(solvent);
            table.Append(F($"| {solvent} | {rate} | {model:0.00} | {model / rate:0.00} |\n"));
        }

        return table.ToString();
    }

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

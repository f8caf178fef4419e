using BoothWatch.Film;
using BoothWatch.Solvents;
using BoothWatch.Tests.Film;
using ScottPlot;
using ScottPlot.Plottables;

namespace BoothWatch.Benchmarks.Film;

/// <summary>Draws the plots of the film method as SVG.</summary>
internal static class FilmPlots
{
    private static readonly Color[] Colours =
        [Color.FromHex("#0072B2"), Color.FromHex("#D55E00"), Color.FromHex("#009E73"), Color.FromHex("#CC79A7"), Color.FromHex("#000000")];

    // Dashes do not reach SVG in this package: marker shapes tell lines apart for the colour-blind.
    private static readonly MarkerShape[] Markers = [MarkerShape.FilledCircle, MarkerShape.OpenSquare, MarkerShape.FilledTriangleUp, MarkerShape.OpenDiamond];

    /// <summary>Draws all plots into a folder.</summary>
    public static int Draw(string folder, TextWriter output)
    {
        Directory.CreateDirectory(folder);
        foreach ((string name, Func<Plot> draw) in (ReadOnlySpan<(string, Func<Plot>)>)
        [
            ("film-temperature", Temperature),
            ("film-water", Water),
            ("film-critical-humidity-clear", () => CriticalHumidityPlot(0)),
            ("film-critical-humidity-flash", () => CriticalHumidityPlot(1)),
            ("film-evaporation-rates", EvaporationRates),
            ("film-blush-resistance", BlushResistance),
            ("film-spread", Spread),
            ("film-piece", Piece),
        ])
        {
            draw().SaveSvg(Path.Combine(folder, name + ".svg"), 760, 440);
            output.WriteLine("{0}.svg", name);
        }

        return 0;
    }

    private static (string Name, DryingResult Run)[] TwoFlashCoats()
    {
        double vapour = TestCoat.VapourPressurePa(24, 84);
        Mix flash = FilmTables.Coats[1].Mix;
        return [.. ((double[])[0, 10]).Select(level => (
            $"{level} % retarder",
            DryingRun.Simulate(TestCoat.Conditions(TestCoat.Retarded(flash, level), airC: 24, wetFilmUm: 40), vapour, null, true)))];
    }

    private static Plot Temperature()
    {
        Plot plot = Frame("Flash coat at 24 °C and 84 % RH: the film against the dew point", "seconds since the coat landed", "°C");
        AddRuns(plot, point => point.FilmTemperatureC);
        HorizontalLine dew = plot.Add.HorizontalLine(BoothWatch.Air.DewPoint.OverWater(TestCoat.VapourPressurePa(24, 84)));
        dew.Color = Colours[4];
        dew.LineWidth = 1.5f;
        dew.LegendText = "dew point";
        plot.ShowLegend(Alignment.LowerRight);
        return plot;
    }

    private static Plot Water()
    {
        Plot plot = Frame("The same coats: free water in the film, ending at set", "seconds since the coat landed", "g/m²");
        AddRuns(plot, point => point.WaterGPerM2);
        HorizontalLine tolerance = plot.Add.HorizontalLine(FilmParameters.Default.BlushToleranceGPerM2);
        tolerance.Color = Colours[4];
        tolerance.LineWidth = 1.5f;
        tolerance.LegendText = "tolerance";
        plot.ShowLegend(Alignment.UpperRight);
        return plot;
    }

    private static void AddRuns(Plot plot, Func<DryingPoint, double> value)
    {
        int index = 0;
        foreach ((string name, DryingResult run) in TwoFlashCoats())
        {
            Scatter line = plot.Add.Scatter(run.Trajectory.Select(point => point.TimeS).ToArray(), run.Trajectory.Select(value).ToArray());
            Style(line, index++, name);
            line.MarkerSize = 5;
            DryingPoint last = run.Trajectory[^1];
            Marker set = plot.Add.Marker(last.TimeS, value(last));
            set.Color = line.Color;
            set.Size = 14;
        }
    }

    private static Plot CriticalHumidityPlot(int coat)
    {
        (string name, Mix mix, double wetFilmUm) = FilmTables.Coats[coat];
        Plot plot = Frame($"Critical humidity: {name}", "air and piece, °C", "% RH");
        int index = 0;
        foreach (double level in FilmTables.LevelsPct)
        {
            double[] humidity = [.. FilmTables.TemperaturesC.Select(airC =>
                TestCoat.CriticalPct(TestCoat.Conditions(TestCoat.Retarded(mix, level), airC, wetFilmUm: wetFilmUm)))];
            Style(plot.Add.Scatter(FilmTables.TemperaturesC, humidity), index++, $"{level} % 2-butoxyethanol");
        }

        plot.Axes.SetLimitsY(60, 100);
        plot.ShowLegend(Alignment.LowerLeft);
        return plot;
    }

    private static Plot EvaporationRates()
    {
        Plot plot = Frame("Evaporation rates of neat solvents (n-butyl acetate = 1), powers of ten", "published", "model");
        double reference = TestCoat.NinetyPercentS("n-butyl acetate");
        double[] published = [.. PublishedFigures.EvaporationRates.Select(row => Math.Log10(row.Rate))];
        double[] model = [.. PublishedFigures.EvaporationRates.Select(row => Math.Log10(reference / TestCoat.NinetyPercentS(row.Solvent)))];
        Scatter points = plot.Add.ScatterPoints(published, model);
        points.Color = Colours[0];
        points.MarkerSize = 7;
        points.LegendText = "solvent";
        double factor = Math.Log10(1.4);
        Line(plot, 0, Colours[4], "equal");
        Line(plot, factor, Colours[1], "factor 1.4");
        Line(plot, -factor, Colours[1], null);
        plot.ShowLegend(Alignment.LowerRight);
        return plot;

        static void Line(Plot plot, double shift, Color colour, string? legend)
        {
            LinePlot line = plot.Add.Line(-1.2, -1.2 + shift, 0.9, 0.9 + shift);
            line.Color = colour;
            line.LegendText = legend ?? "";
        }
    }

    private static Plot BlushResistance()
    {
        Plot plot = Frame("Blush resistance of neat solvents at 26.7 °C, 8 % nitrate, 200 µm", "printed or remembered, % RH", "model, % RH");
        double[] published = [.. PublishedFigures.BlushResistance.Select(row => row.Pct)];
        int index = 0;
        foreach (double thicknessMm in (double[])[1, 3])
        {
            double[] model = [.. PublishedFigures.BlushResistance.Select(row => TestCoat.BlushResistancePct(row.Solvent, thicknessMm / 1000))];
            Scatter points = plot.Add.ScatterPoints(published, model);
            points.Color = Colours[index];
            points.MarkerSize = 8;
            points.MarkerShape = index == 0 ? MarkerShape.FilledCircle : MarkerShape.OpenSquare;
            points.LegendText = $"{thicknessMm} mm glass";
            index++;
        }

        LinePlot equal = plot.Add.Line(30, 30, 100, 100);
        equal.Color = Colours[4];
        equal.LegendText = "equal";
        plot.Axes.SetLimits(30, 100, 30, 100);
        plot.ShowLegend(Alignment.LowerRight);
        return plot;
    }

    private static Plot Spread()
    {
        Plot plot = Frame("What moves the critical dew point: clear coat, 25 °C", "°C", "");
        (_, Mix mix, double wetFilmUm) = FilmTables.Coats[0];
        int count = Variations.All.Length;
        Bar[] bars = [.. Enumerable.Range(0, count).Select(i => new Bar
        {
            Position = count - i,
            Value = Variations.ChangeC(i, mix, wetFilmUm, 25),
            FillColor = Colours[0],
            Size = 0.7,
        })];
        BarPlot plotted = plot.Add.Bars(bars);
        plotted.Horizontal = true;
        plot.Axes.Left.SetTicks([.. Enumerable.Range(0, count).Select(i => (double)(count - i))], [.. Variations.All.Select(variation => variation.Name)]);
        return plot;
    }

    private static Plot Piece()
    {
        Plot plot = Frame("A piece colder or warmer than air of 25 °C (clear coat, no retarder)", "piece minus air, °C", "critical humidity, % RH");
        double[] differences = [-10, -8, -6, -4, -2, 0, 2, 4, 6];
        int index = 0;
        foreach (double wetFilmUm in (double[])[50, 75, 150])
        {
            double[] humidity = [.. differences.Select(difference =>
                TestCoat.CriticalPct(TestCoat.Conditions(FilmTables.Coats[0].Mix, 25, 25 + difference, wetFilmUm)))];
            Style(plot.Add.Scatter(differences, humidity), index++, $"{wetFilmUm} µm wet");
        }

        plot.ShowLegend(Alignment.LowerRight);
        return plot;
    }

    private static void Style(Scatter line, int index, string legend)
    {
        line.Color = Colours[index];
        line.MarkerShape = Markers[index];
        line.LineWidth = 2.5f;
        line.MarkerSize = 9;
        line.LegendText = legend;
    }

    private static Plot Frame(string title, string x, string y)
    {
        Plot plot = new();
        plot.Title(title, 15);
        plot.XLabel(x);
        plot.YLabel(y);
        return plot;
    }
}

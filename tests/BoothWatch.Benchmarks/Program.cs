using BenchmarkDotNet.Running;
using BoothWatch.Benchmarks.Alerts;
using BoothWatch.Benchmarks.Demo;
using BoothWatch.Benchmarks.Film;
using BoothWatch.Benchmarks.Jobs;
using BoothWatch.Benchmarks.Outlook;
using BoothWatch.Benchmarks.Reviews;
using BoothWatch.Benchmarks.Scaling;
using BoothWatch.Benchmarks.Series;
using BoothWatch.Benchmarks.Tick;
using BoothWatch.Benchmarks.WhatIf;

// plots FOLDER        draws the plots of docs/method.md, normally into docs/plots
// tables FILE         rewrites the tables of docs/method.md in place
// cost                processor time of the film model beside a fixed loop
// journal             one day of journal
// demo [MINUTES]      start to first verdict and memory of the demo
// jobs                server time of every list, job and coat with 10,000 coats and five years of minutes
// reviews             server time of the reviews of coats
// outlook FILE ...     score of the outlook on files of open weather data (docs/outlook.md)
// alerts              how long an alert takes from the reading to a webhook receiver on loopback
// tick                what a tick costs, with all outputs up and with all down
// what-if             how long an answer to a what-if question takes
// shipping            how fast a backlog goes to a database (needs victoria-metrics)
// scaling [SECONDS [BOOTHS ...]]   one broker and one database under 1 to 500 booths (needs mosquitto and victoria-metrics)
// anything else       goes to BenchmarkDotNet, for example --filter *Film*
return args switch
{
    ["plots", string folder] => FilmPlots.Draw(folder, Console.Out),
    ["tables", string file] => FilmTables.Rewrite(file, Console.Out),
    ["cost"] => FilmCost.Print(Console.Out),
    ["journal"] => await JournalDay.RunAsync(Console.Out),
    ["jobs"] => await FiveYears.RunAsync(Console.Out),
    ["reviews"] => await ReviewCost.RunAsync(Console.Out),
    ["demo"] => await DemoRun.RunAsync(10, Console.Out),
    ["demo", string minutes] => await DemoRun.RunAsync(double.Parse(minutes, System.Globalization.CultureInfo.InvariantCulture), Console.Out),
    ["outlook", .. string[] files] => OutlookScores.Print(files, Console.Out),
    ["alerts"] => await AlertLatency.RunAsync(Console.Out),
    ["tick"] => await TickCost.RunAsync(Console.Out),
    ["what-if"] => await WhatIfAnswers.RunAsync(Console.Out),
    ["shipping"] => await ShippingSpeed.RunAsync(Console.Out),
    ["scaling"] => await ScalingRun.RunAsync(30, [], Console.Out),
    ["scaling", string seconds, .. string[] booths] => await ScalingRun.RunAsync(
        double.Parse(seconds, System.Globalization.CultureInfo.InvariantCulture), [.. booths.Select(int.Parse)], Console.Out),
    _ => BenchmarkSwitcher.FromAssembly(typeof(FilmBenchmarks).Assembly).Run(args).Any() ? 0 : 2,
};

using System.Text.Json;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Materials;

namespace BoothWatch.Service.Jobs;

/// <summary>Reads config/schedules: one schedule a file. Finds all errors before it throws.</summary>
public static class SchedulesLoader
{
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
    private static readonly string KindWords = string.Join(", ", Enum.GetNames<CoatKind>()).ToLowerInvariant();

    /// <summary>Reads the folder; without one there are no schedules, and so no timers.</summary>
    /// <param name="folder">The folder with *.json.</param>
    /// <exception cref="MaterialsException">Anything is wrong; lists every error with file, key, value and fix.</exception>
    public static ScheduleBook Load(string folder)
    {
        List<string> errors = [];
        Dictionary<string, Schedule> schedules = new(StringComparer.OrdinalIgnoreCase);
        foreach (string path in Files(folder))
        {
            if (Read(path, errors) is { } schedule && !schedules.TryAdd(schedule.Id, schedule))
            {
                errors.Add($"{Path.GetFileName(path)}: id repeats {schedule.Id}; give each schedule an id of its own");
            }
        }

        return errors.Count == 0 ? new ScheduleBook(schedules) : throw new MaterialsException(errors);
    }

    private static string[] Files(string folder) =>
        Directory.Exists(folder) ? [.. Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal)] : [];

    private static Schedule? Read(string path, List<string> errors)
    {
        string file = Path.GetFileName(path);
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path), Lenient);
            return Read(document.RootElement, file, errors);
        }
        catch (JsonException error)
        {
            errors.Add($"{file}: not valid JSON at line {error.LineNumber + 1}: {error.Message}; correct the syntax");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            errors.Add($"{file}: cannot be read: {error.Message}; correct its permissions or take it away");
        }

        return null;
    }

    private static Schedule Read(JsonElement root, string file, List<string> errors)
    {
        MaterialNode node = new(root, file, errors);
        Schedule schedule = new()
        {
            Id = node.Text("id"),
            Description = node.Text("description"),
            Basis = node.Text("basis"),
            Round = ReadRound(node, file, errors),
            Rounds = Whole(node.Number("rounds", 1, 50, "", 3), "rounds", node),
            SandNoCoarserThanGrit = node.OptionalNumber("sandNoCoarserThanGrit", 80, 5000, "(grit)", 800) is { } grit
                ? Whole(grit, "sandNoCoarserThanGrit", node)
                : null,
            SoftFor = TimeSpan.FromHours(node.Number("softHours", 0, 720, "h", 24)),
            HangBeforeBuffing = node.OptionalNumber("hangDaysBeforeBuffing", 0, 365, "d", 7) is { } days ? TimeSpan.FromDays(days) : null,
        };
        node.RejectUnknownKeys();
        return schedule;
    }

    private static List<ScheduleStep> ReadRound(MaterialNode node, string file, List<string> errors)
    {
        List<ScheduleStep> steps = [];
        if (!node.TryList("round", out JsonElement list) || list.GetArrayLength() == 0)
        {
            node.Fail("round", "is missing or empty; give a list with at least one coat, for example [ { \"coat\": \"clear\", \"waitMinutes\": 120 } ]");
            return steps;
        }

        int index = 0;
        foreach (JsonElement element in list.EnumerateArray())
        {
            MaterialNode step = new(element, $"{file}: round[{index++}]", errors);
            string word = step.Text("coat");
            if (!CoatWords.TryKind(word, out CoatKind kind))
            {
                step.Fail("coat", $"is {word}; give one of {KindWords}");
            }

            steps.Add(new ScheduleStep(kind, TimeSpan.FromMinutes(step.Number("waitMinutes", 0, 20160, "min", 240))));
            step.RejectUnknownKeys();
        }

        return steps;
    }

    private static int Whole(double number, string key, MaterialNode node)
    {
        if (number != Math.Floor(number))
        {
            node.Fail(key, FormattableString.Invariant($"is {number}; give a whole number"));
        }

        return (int)number;
    }
}

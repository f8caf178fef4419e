using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Checks;

/// <content>What ran before this start.</content>
internal sealed partial class CheckBook
{
    // What the file and the journal know of, together.
    private void TakeUp(IReadOnlyList<HoldLine>? lines)
    {
        ReadJournal();
        foreach (HoldLine line in lines ?? [])
        {
            if (line.Quality == ReadingQuality.FailedCheck)
            {
                _failed = _failed.ContainsKey(line.Sensor) || IsOver(line) ? _failed : _failed.Add(line.Sensor, line);
            }
            else if (!_running.ContainsKey(line.Sensor))
            {
                TakeUp(new RunningCheck(line.Sensor, line.Since, line.SpareMayStandIn, _limits, line.Part));
            }
        }

        if (lines is null)
        {
            HoldAll(_file);
        }

        foreach (RunningCheck check in _running.Values)
        {
            LogGoesOn(check.Sensor);
        }
    }

    private void HoldAll(HoldFile unreadable)
    {
        LogUnreadable(unreadable.FilePath);
        foreach (ISensor sensor in _sensors.Where(sensor => !_running.ContainsKey(sensor.Name)))
        {
            TakeUp(new RunningCheck(sensor.Name, _time.GetUtcNow(), spareMayStandIn: false, _limits, sensor.Description));
        }
    }

    // While parts are proved, a real one may have been put into a jar, or failed there, and all that is known of it lies beside the demo's journal.
    private void TakeOver(HoldFile? demo)
    {
        if (demo is null || demo.Read() is { Count: 0 })
        {
            return;
        }

        HoldLine[] others = [];
        if (demo.Read() is { } lines)
        {
            others = [.. lines.Where(line => !Follow(line, HavingPart(line.Part)))];
            if (others.Length == lines.Count)
            {
                return;
            }
        }
        else
        {
            HoldAll(demo);
        }

        try
        {
            WriteFile();
            demo.Write(others);
        }
        catch (Exception trouble) when (trouble is JournalException or IOException or UnauthorizedAccessException)
        {
            LogTrouble(trouble.Message); // held now, and taken over once more at the next start
        }
    }

    // A hold is known by the name of the sensor. Where the configuration has given the part another name since, it holds that one as well.
    private void FollowParts()
    {
        bool isMore = false;
        foreach (HoldLine line in Lines().Concat(_failed.Values).ToArray())
        {
            isMore |= Follow(line, HavingPart(line.Part).Where(sensor => sensor.Name != line.Sensor));
        }

        if (isMore)
        {
            TryWriteFile();
        }
    }

    private IEnumerable<ISensor> HavingPart(string? part) => _sensors.Where(sensor => sensor.Description == part);

    // True when there is a sensor to follow to, which is held from here on.
    private bool Follow(HoldLine line, IEnumerable<ISensor> to)
    {
        ISensor[] sensors = [.. to];
        foreach (ISensor sensor in sensors)
        {
            HoldLine moved = line with { Sensor = sensor.Name, SpareMayStandIn = line.Quality == ReadingQuality.FailedCheck };
            if (moved.Quality == ReadingQuality.FailedCheck)
            {
                _failed = _failed.ContainsKey(moved.Sensor) || IsOver(moved) ? _failed : _failed.Add(moved.Sensor, moved);
            }
            else if (!_running.ContainsKey(moved.Sensor))
            {
                TakeUp(new RunningCheck(moved.Sensor, moved.Since, moved.SpareMayStandIn, _limits, moved.Part));
                LogGoesOn(moved.Sensor);
            }
        }

        return sensors.Length > 0;
    }

    private void TakeUp(RunningCheck check)
    {
        // Ended in the journal, and the file could not follow any more: it only has to settle once more.
        if (_entries.LastOrDefault(entry => entry.Sensor == check.Sensor) is { Step: CheckStep.Ended } ended && ended.At >= check.Since)
        {
            foreach (CheckEntry entry in _entries.Where(entry => entry.CheckId == ended.CheckId))
            {
                check.Apply(entry, Elapsed);
            }
        }

        _running.Add(check.Sensor, check);
    }

    private void ReadJournal()
    {
        try
        {
            IReadOnlyList<CheckEntry> all = _store.All();
            _entries.Clear();
            _entries.AddRange(all);
            (Trouble, _troubleSince) = (null, null);
        }
        catch (JournalException trouble)
        {
            (Trouble, _troubleSince) = (trouble.Message, _time.GetTimestamp());
            LogTrouble(trouble.Message);
            return;
        }

        foreach (CheckEntry[] check in _entries.Where(entry => entry.Step != CheckStep.Replaced).GroupBy(entry => entry.CheckId).Select(group => group.ToArray()))
        {
            if (check[^1].Step != CheckStep.Ended && !(_running.GetValueOrDefault(check[0].Sensor) is { Id: not null }))
            {
                RunningCheck running = new(check[0].Sensor, check[0].At, check[0].Fields.SpareMayStandIn == true, _limits, check[0].Fields.Part);
                foreach (CheckEntry entry in check)
                {
                    running.Apply(entry, Elapsed);
                }

                _running[running.Sensor] = running;
            }
        }

        FindFailed();
    }

    private void AskTheJournalAgain()
    {
        if (_troubleSince is { } since && _time.GetElapsedTime(since) >= AskAgainAfter)
        {
            ReadJournal();
            FollowParts();
            PutHolds();
        }
    }
}

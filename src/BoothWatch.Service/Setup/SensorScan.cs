using System.Device.I2c;
using System.Globalization;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Setup;

/// <summary>
/// Looks for known parts at their usual addresses. It is safe beside running sensors: an address that is configured is not asked but taken
/// from the last reading; the others are asked for their identity alone, over a bus opened apart; and the kernel carries out one transfer at
/// a time on an adapter, so that a question falls between two transfers of the sensors and never into one.
/// </summary>
/// <param name="buses">The buses.</param>
/// <param name="board">The last readings.</param>
/// <param name="options">What is configured.</param>
/// <param name="time">The clock.</param>
/// <param name="hasBus">Whether the board has a bus of a number.</param>
internal sealed class SensorScan(I2cBusSource buses, SnapshotBoard board, IOptions<SensorsOptions> options, TimeProvider time, Func<int, bool> hasBus)
{
    private const int UsualBus = 1;

    // A question takes some milliseconds; a bus that is held by something takes the timeout of the adapter, about a second.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.5);

    private readonly Lock _one = new();

    /// <summary>Looks at every configured bus, and at the real one of the same number where the board has it. Blocks for some milliseconds, longer on a sick bus.</summary>
    public ScanAnswer Look()
    {
        lock (_one)
        {
            Place[] configured = [.. Configured()];
            List<ScanLine> lines = [];
            List<string> looked = [];
            List<string> troubles = [];
            int silent = 0;
            foreach ((SignalSource source, int bus) in BusesToLookAt(configured))
            {
                string name = source == SignalSource.Real ? $"/dev/i2c-{bus}" : $"emulated bus {bus}";
                looked.Add(name);
                Place[] here = [.. configured.Where(place => place.Source == source && place.Bus == bus)];
                lines.AddRange(here.Select(Known));
                try
                {
                    (IReadOnlyList<ScanLine> found, int quiet) = Ask(source, bus, [.. here.Select(place => place.Address)]);
                    lines.AddRange(found);
                    silent += quiet;
                }
                catch (Exception trouble) when (trouble is IOException or TimeoutException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
                {
                    troubles.Add($"{name} cannot be looked at ({trouble.Message.TrimEnd('.')}); check that it is switched on, that the service may use it (group i2c), and its wiring");
                }
            }

            return new ScanAnswer(looked, lines, silent, troubles);
        }
    }

    private IEnumerable<Place> Configured()
    {
        foreach ((SensorRole role, SensorOptions sensor) in options.Value.All())
        {
            if (SensorParts.Find(sensor.Part) is I2cPart part && SignalSourceWord.Parse(sensor.Source) is { } source && part.AddressOf(sensor) is { } address)
            {
                yield return new Place(role, part, source, sensor.Bus, address);
            }
        }
    }

    private IEnumerable<(SignalSource Source, int Bus)> BusesToLookAt(Place[] configured)
    {
        (SignalSource Source, int Bus)[] own = [.. configured.Select(place => (place.Source, place.Bus)).Distinct()];
        int[] numbers = [.. own.Select(place => place.Bus).Append(UsualBus).Distinct()];
        return own.Union(numbers.Where(hasBus).Select(bus => (SignalSource.Real, bus))).Order();
    }

    // A part that is in use is not asked: the poller asks it every second.
    private ScanLine Known(Place place)
    {
        BoothSnapshot snapshot = board.Take();
        Reading[] readings = [.. snapshot.Readings.Values.Concat(snapshot.Others).Where(reading => reading.Sensor == place.Role.Name)];
        Reading? bad = readings.FirstOrDefault(reading => !reading.IsGood);
        string finding = readings.Length == 0 ? "configured; no answer yet"
            : bad is null ? "configured, and answers"
            : $"configured; {bad.Cause?.ToString() ?? "its reading is not good"}";
        return new ScanLine(place.Bus, Hex(place.Address), Word(place.Source), place.Part.Id, place.Role.Name, finding, readings.Length > 0 && bad is null, RolesOf(place.Part), null);
    }

    private (IReadOnlyList<ScanLine> Found, int Silent) Ask(SignalSource source, int number, HashSet<int> taken)
    {
        List<ScanLine> found = [];
        int silent = 0;
        I2cBus bus = buses.Apart(source, number);
        try
        {
            ILookup<int, I2cPart> candidates = SensorParts.All.OfType<I2cPart>()
                .SelectMany(part => part.UsualAddresses, (part, address) => (part, address))
                .Where(candidate => !taken.Contains(candidate.address))
                .OrderBy(candidate => candidate.address)
                .ToLookup(candidate => candidate.address, candidate => candidate.part);
            foreach (IGrouping<int, I2cPart> place in candidates)
            {
                long start = time.GetTimestamp();
                (bool answers, I2cPart? part) = Ask(bus, place.Key, place);
                if (time.GetElapsedTime(start) > Patience)
                {
                    throw new TimeoutException($"the question to {Hex(place.Key)} took longer than {Patience.TotalSeconds} s, so something holds the bus");
                }

                silent += answers ? 0 : 1;
                if (answers)
                {
                    found.Add(part is null ? Stranger(source, number, place) : Newcomer(source, number, place.Key, part));
                }
            }
        }
        finally
        {
            if (source == SignalSource.Real)
            {
                bus.Dispose();
            }
        }

        return (found, silent);
    }

    private static (bool Answers, I2cPart? Part) Ask(I2cBus bus, int address, IEnumerable<I2cPart> parts)
    {
        bool answers = false;
        using I2cDevice device = bus.CreateDevice(address);
        foreach (I2cPart part in parts)
        {
            try
            {
                if (part.Recognises(device))
                {
                    return (true, part);
                }

                answers = true;
            }
            catch (IOException)
            {
                // Nothing acknowledges: no device, or one that does not know the question.
            }
        }

        return (answers, null);
    }

    private ScanLine Newcomer(SignalSource source, int bus, int address, I2cPart part)
    {
        string likely = part.Id == "ads1115-pressure" ? "answers as an ADS1115 does, which sends nothing that identifies it" : "found";
        SensorRole? role = RoleFor(part, source);
        string name = (role ?? part.Roles[0]).Name;
        string pressure = GivesPressureBeside(part, name) ? ", \"stationPressure\": false" : "";
        string line = $$"""
            "{{name}}": { "part": "{{part.Id}}", "source": "{{Word(source)}}", "bus": {{bus}}, "address": "{{Hex(address)}}"{{pressure}} },
            """;
        string finding = role is null ? $"{likely}; every sensor that it could be has a part already, and this line would replace one" : $"{likely}, not configured";
        return new ScanLine(bus, Hex(address), Word(source), part.Id, null, finding, true, RolesOf(part), line);
    }

    private static ScanLine Stranger(SignalSource source, int bus, IGrouping<int, I2cPart> place) => new(
        bus, Hex(place.Key), Word(source), null, null,
        $"something answers, but not as {string.Join(" or ", place.Select(part => part.Id))}: another part, or bad wiring", false, [], null);

    // The first sensor that the part can be and that is not there yet, or is emulated where the part is real.
    private SensorRole? RoleFor(I2cPart part, SignalSource source) => part.Roles.FirstOrDefault(role =>
        options.Value.All().Single(sensor => sensor.Role == role).Options is { } now
        && (now.Part == SensorsOptions.None || (source == SignalSource.Real && SensorParts.Find(now.Part)?.IsEmulated(now) == true)));

    // Only one sensor may give the station pressure.
    private bool GivesPressureBeside(I2cPart part, string name) => part.GivesPressure(new SensorOptions())
        && options.Value.All().Any(other => other.Role.Name != name && SensorParts.Find(other.Options.Part)?.GivesPressure(other.Options) == true);

    private static string[] RolesOf(I2cPart part) => [.. part.Roles.Select(role => role.Name)];

    private static string Word(SignalSource source) => source == SignalSource.Real ? "real" : "emulated";

    private static string Hex(int address) => string.Create(CultureInfo.InvariantCulture, $"0x{address:X2}");

    private sealed record Place(SensorRole Role, I2cPart Part, SignalSource Source, int Bus, int Address);
}

using System.Collections;
using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using Google.Protobuf;
using Quarterlight.Crew;
using Quarterlight.Crew.Keeping;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>What a conversation remembers comes back from its bytes whole, or not at all.</summary>
public sealed class CrewMemoryCodecTests
{
    private static readonly Type[] Said = [typeof(RadioMemory), typeof(ForecastMemory)];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Read_EveryPropertySet_ComesBackWhole(int seed)
    {
        var filler = new Filler(seed);
        CrewMemory memory = Full(filler);

        CrewMemory back = CrewMemoryCodec.Read(CrewMemoryCodec.Write(memory))!;

        Assert.NotNull(back);
        AssertSame(memory, back, "memory");
        Assert.Null(back.LastClip!.File);
        Assert.Contains(nameof(RadioSaid), filler.Made);
        Assert.Contains(nameof(HeatSaid), filler.Made);
        Assert.Contains(nameof(SeatMention), filler.Made);
    }

    [Fact]
    public void Read_NothingSaid_ComesBackWithEmptyListsNotNull()
    {
        CrewMemory memory = CrewMemory.Empty with { LastRadio = new(CrewIntent.LinkCheck, new()), LastForecast = new(CrewIntent.Levels, new()) };

        CrewMemory back = CrewMemoryCodec.Read(CrewMemoryCodec.Write(memory))!;

        AssertSame(memory, back, "memory");
        Assert.Empty(back.LastRadio!.Said.Stations);
        Assert.Equal(CrewMemory.Empty, CrewMemoryCodec.Read(CrewMemoryCodec.Write(CrewMemory.Empty)));
    }

    [Fact]
    public void AssertSame_OnePropertyOff_IsNoticed()
    {
        CrewMemory memory = Full(new Filler(1));
        CrewMemory off = memory with { LastForecast = memory.LastForecast! with { Said = memory.LastForecast.Said with { Heat = memory.LastForecast.Said.Heat with { Adults = 99 } } } };

        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertSame(memory, off, "memory"));
    }

    [Fact]
    public void Read_AnyByteChangedOrCutOff_IsNothing()
    {
        byte[] bytes = CrewMemoryCodec.Write(Full(new Filler(4)));
        var random = new Random(11);
        for (int i = 0; i < 2000; i++)
        {
            byte[] damaged = [.. bytes];
            damaged[i < 100 ? i : random.Next(bytes.Length)] ^= (byte)random.Next(1, 256);
            Assert.Null(CrewMemoryCodec.Read(damaged));
            Assert.Null(CrewMemoryCodec.Read(bytes.AsSpan(0, random.Next(bytes.Length))));
        }

        Assert.Null(CrewMemoryCodec.Read([]));
        Assert.Null(CrewMemoryCodec.Read(new byte[CrewMemoryCodec.LargestBytes + 1]));
        Assert.NotNull(CrewMemoryCodec.Read(bytes));
    }

    [Fact]
    public void Read_WellSealedNonsense_IsNothing()
    {
        foreach ((byte tag, byte[] payload) in new (byte, byte[])[]
        {
            (5, "{}"u8.ToArray()), (5, "null"u8.ToArray()), (5, "{\"Intent\":\"LinkCheck\",\"Said\":null}"u8.ToArray()), (5, "{\"Intent\":\"Sing\",\"Said\":{}}"u8.ToArray()), (5, [0xff, 0xfe]),
            (5, "{\"Intent\":\"LinkCheck\",\"Said\":{\"Stations\":[\"!!\"]}}"u8.ToArray()), (8, [0x0a, 0xff]), (1, [7]), (7, []), (99, [1]), (4, System.Text.Encoding.UTF8.GetBytes(new string('[', 5000))),
        })
        {
            byte[] part = [tag, .. BitConverter.GetBytes(payload.Length), .. payload];
            byte[] sealedBytes = [.. "QLCM"u8, CrewMemoryCodec.Version, .. CrewMemoryCodec.Check(part), .. part];
            CrewMemory? back = CrewMemoryCodec.Read(sealedBytes);
            Assert.True(back is null || back.LastRadio is null, $"part {tag}");
        }
    }

    [Fact]
    public void Read_BytesOfAProgramThatRemembersOtherThings_IsNothing()
    {
        byte[] bytes = CrewMemoryCodec.Write(CrewMemory.Empty with { SceneName = "scenes/a" });
        byte[] other = [.. bytes[..5], .. System.Security.Cryptography.SHA256.HashData(bytes.AsSpan(13))[..8], .. bytes[13..]];

        Assert.NotNull(CrewMemoryCodec.Read(bytes));
        Assert.Null(CrewMemoryCodec.Read(other));
        foreach (Type type in new[] { typeof(RadioSaid), typeof(AntennaSaid), typeof(PowerSaid), typeof(BandSaid), typeof(ForecastSaid), typeof(HeatSaid), typeof(RunTimeSaid), typeof(LevelSaid), typeof(NoiseSaid), typeof(ConditionChanges), typeof(WindowSaid), typeof(SeatMention) })
        {
            Assert.All(Settable(type), p => Assert.Contains($"{p.Name}:{p.PropertyType};", WholeShape, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Shape_Kept_IsThatOfWhatIsRemembered()
    {
        string now = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(WholeShape)))[..16];

        Assert.True(now == CrewMemoryCodec.Shape, $"What is remembered has changed: write \"{now}\" as {nameof(CrewMemoryCodec)}.{nameof(CrewMemoryCodec.Shape)}. Memories written before are not read any more.");
    }

    [Fact]
    public void Write_TooLarge_DropsTheLargestPartFirst()
    {
        CrewMemory memory = Full(new Filler(5));
        var plan = new Plan { Scene = new Scene { DisplayName = new string('p', 200_000) } };
        CrewMemory large = memory with { Plan = plan, LastClip = ClipMemory.Kept(new ClipReport { FileName = new string('c', 100_000) }, "scenes/a", true) };

        byte[] bytes = CrewMemoryCodec.Write(large);

        Assert.InRange(bytes.Length, 1, CrewMemoryCodec.LargestBytes);
        AssertSame(large with { Plan = null }, CrewMemoryCodec.Read(bytes)!, "memory");

        var stations = new RadioSaid { Stations = [.. Enumerable.Range(0, 30_000).Select(i => new HeardStation { FrequencyMhz = i })] };
        CrewMemory loud = memory with { LastRadio = new(CrewIntent.QuietChannel, stations) };
        AssertSame(loud with { LastRadio = null }, CrewMemoryCodec.Read(CrewMemoryCodec.Write(loud))!, "memory");
    }

    // Names and types of everything remembered as JSON.
    private static string WholeShape { get; } = ShapeOf(CrewMemoryJson.Default.RadioMemory, CrewMemoryJson.Default.ForecastMemory, CrewMemoryJson.Default.KeptClipFacts);

    private static string ShapeOf(params IEnumerable<JsonTypeInfo> roots)
    {
        var shape = new System.Text.StringBuilder();
        var seen = new HashSet<Type>();
        var open = new Queue<JsonTypeInfo>(roots);
        while (open.TryDequeue(out JsonTypeInfo? type))
        {
            if (!seen.Add(type.Type))
            {
                continue;
            }

            shape.Append(type.Type).Append('{');
            foreach (JsonPropertyInfo property in type.Properties)
            {
                shape.Append(property.Name).Append(':').Append(property.PropertyType).Append(';');
                Enqueue(property.PropertyType);
            }

            shape.Append('}');
            Enqueue(type.ElementType);
        }

        return shape.ToString();

        void Enqueue(Type? type)
        {
            if (type is not null && CrewMemoryJson.Default.GetTypeInfo(type) is { } known)
            {
                open.Enqueue(known);
            }
        }
    }

    private static CrewMemory Full(Filler filler) => new()
    {
        SceneName = "scenes/ferry",
        Units = UnitPreference.Imperial,
        Plan = new Plan { Scene = Crew.Demo.DemoData.Scenes[0] },
        LastChanges = new SceneChanges { RemovedShotIds = { "A" }, DriveConditions = new DriveConditions { SpeedKmPerHour = 40 } },
        LastRadio = (RadioMemory)filler.Make(typeof(RadioMemory)),
        LastForecast = (ForecastMemory)filler.Make(typeof(ForecastMemory)),
        LastClip = ClipMemory.Of(CannedClips.Clip(), new CrewAttachment("a.wav", 5, _ => Task.FromResult(Stream.Null)), "scenes/ferry"),
    };

    // By reflection, so that a property added later cannot be forgotten.
    private static void AssertSame(object? expected, object? actual, string at)
    {
        if (expected is null || actual is null || expected is string or ValueType or IMessage)
        {
            Assert.True(Equals(expected, actual), $"{at}: {expected} became {actual}");
            return;
        }

        if (expected is IEnumerable list)
        {
            object?[] one = [.. list.Cast<object?>()], other = [.. ((IEnumerable)actual).Cast<object?>()];
            Assert.True(one.Length == other.Length, $"{at}: {one.Length} became {other.Length}");
            for (int i = 0; i < one.Length; i++)
            {
                AssertSame(one[i], other[i], $"{at}[{i}]");
            }

            return;
        }

        foreach (PropertyInfo property in Settable(expected.GetType()).Where(p => p.PropertyType != typeof(CrewAttachment)))
        {
            AssertSame(property.GetValue(expected), property.GetValue(actual), $"{at}.{property.Name}");
        }
    }

    private static IEnumerable<PropertyInfo> Settable(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite && p.GetIndexParameters().Length == 0);

    /// <summary>Makes a record with every property set to something that is not its default.</summary>
    private sealed class Filler(int seed)
    {
        private readonly Random random = new(seed);

        public HashSet<string> Made { get; } = [];

        public object Make(Type type)
        {
            type = Nullable.GetUnderlyingType(type) ?? type;
            if (type == typeof(string))
            {
                return "wörd \"" + random.Next(1000) + "\" <&>";
            }

            if (type == typeof(bool))
            {
                return true;
            }

            if (type == typeof(int))
            {
                return random.Next(1, 1000);
            }

            if (type == typeof(double))
            {
                return random.NextDouble() * 1000;
            }

            if (type.IsEnum)
            {
                Array values = Enum.GetValues(type);
                return values.GetValue(random.Next(1, values.Length))!;
            }

            if (type == typeof(HeardStation))
            {
                return new HeardStation { FrequencyMhz = random.NextDouble() * 100, Strength = StationStrength.Strong };
            }

            if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            {
                Type item = type.GetGenericArguments()[0];
                var items = Array.CreateInstance(item, 2);
                items.SetValue(Make(item), 0);
                items.SetValue(Make(item), 1);
                return items;
            }

            Made.Add(type.Name);
            ConstructorInfo constructor = type.GetConstructors().OrderByDescending(c => c.GetParameters().Length).First();
            object made = constructor.Invoke([.. constructor.GetParameters().Select(p => Make(p.ParameterType))]);
            foreach (PropertyInfo property in Settable(type))
            {
                property.SetValue(made, Make(property.PropertyType));
            }

            return made;
        }
    }

    [Fact]
    public void Filler_SaidRecords_SetsEveryPropertyToOtherThanItsDefault()
    {
        foreach (Type type in Said)
        {
            object made = new Filler(9).Make(type);
            Check(made, type.Name);
        }

        static void Check(object made, string at)
        {
            foreach (PropertyInfo property in Settable(made.GetType()))
            {
                object? value = property.GetValue(made);
                Type type = property.PropertyType;
                Assert.False(value is null || (type.IsValueType && Nullable.GetUnderlyingType(type) is null && value.Equals(Activator.CreateInstance(type))) || value is ICollection { Count: 0 }, $"{at}.{property.Name}");
                if (value is not (string or ValueType or IMessage or IEnumerable))
                {
                    Check(value!, $"{at}.{property.Name}");
                }
            }
        }
    }
}

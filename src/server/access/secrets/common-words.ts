/**
 * Words from which most guessed passwords are made. From memory of what published lists of leaked passwords have in common; not
 * one of those lists. What else is refused is a rule in password-rules.ts.
 */
export const COMMON_WORDS: readonly string[] = (
  "password passwort pass passwd kennwort secret geheim login welcome willkommen hello hallo letmein master admin administrator " +
  "root user guest test demo default changeme change temp temporary access security secure private office server computer internet " +
  "qwerty qwertz azerty qwertyuiop qwertzuiop asdf asdfgh asdfghjkl asdfghjk zxcvbn zxcvbnm yxcvbnm qazwsx qazwsxedc wasd poiuytrewq " +
  "iloveyou ichliebedich love loveyou lovely liebe princess prinzessin sunshine sonnenschein monkey dragon shadow superman batman " +
  "spiderman starwars pokemon naruto football fussball soccer baseball basketball hockey tennis golf fishing hunter ranger killer " +
  "jordan michael michelle jennifer jessica ashley daniel andrew thomas robert charlie george jasmine amanda nicole hannah anna maria " +
  "peter martin stefan christian alexander sebastian andreas florian tobias markus matthias patrick maximilian moritz felix lukas leon " +
  "julia laura sarah lisa lena katharina sabine claudia petra monika computer schatz schatzi hasi mausi baby babygirl angel engel " +
  "freedom whatever trustno nothing summer sommer winter spring fruehling autumn herbst january february march april june july august " +
  "september october november december januar februar maerz mai juni juli oktober dezember monday tuesday wednesday thursday friday " +
  "saturday sunday montag dienstag mittwoch donnerstag freitag samstag sonntag berlin hamburg muenchen london paris newyork germany " +
  "deutschland austria schweiz england america canada mustang porsche ferrari mercedes corvette harley yamaha honda toyota chelsea " +
  "arsenal liverpool barcelona bayern borussia schalke flower blume cookie chocolate schokolade coffee kaffee cheese pepper banana " +
  "orange apple samsung google facebook iphone android windows linux matrix gandalf merlin phoenix diamond silver golden purple yellow " +
  "money geld bitcoin lucky happy friend friends family familie forever blessed jesus heaven god god123 biteme ginger buster tigger " +
  "maggie bailey cooper rocky harley daisy lucky max bella luna bruno balu tiger panther eagle falcon wolf bear horse pferd katze hund " +
  "welcome1 abc abcd abcde abcdef abcdefg abcdefgh alphabet number nummer service support manager company firma project projekt " +
  "baustelle foundation drilling bohrung pile pfahl bohrpfahl probe survey vermessung report bericht"
).split(" ");
